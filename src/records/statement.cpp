// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/statement.h"

#include <cmath>
#include <limits>

#include <QVariant>

#include "ringrule/error.h"

namespace ringrule {

Statement::Statement(const Database& database, const std::string& sql, Fetch fetch)
    : database_(database), query_(database.connection()) {
    database.wake();
    // From a server one row at a time is slower, and bars every other statement until the last row was read.
    query_.setForwardOnly(!database.onServer() || fetch == Fetch::RowByRow);
    if (!query_.prepare(QString::fromStdString(sql))) database_.fail(query_.lastError());
}

Statement& Statement::bind(const std::string& text) {
    query_.addBindValue(QString::fromStdString(text));
    return *this;
}

Statement& Statement::bind(std::int64_t number) {
    query_.addBindValue(QVariant::fromValue(static_cast<qlonglong>(number)));
    return *this;
}

Statement& Statement::bind(double number) {
    if (std::isnan(number)) return bindNull();
    query_.addBindValue(number);
    return *this;
}

Statement& Statement::bindNull() {
    query_.addBindValue(QVariant());
    return *this;
}

Statement& Statement::bind(const QVariant& value) {
    query_.addBindValue(value);
    return *this;
}

QVariant Statement::value() {
    return query_.value(column_++);
}

Statement& Statement::run() {
    if (!query_.exec()) database_.fail(query_.lastError());
    return *this;
}

bool Statement::next() {
    column_ = 0;
    if (query_.next()) return true;
    if (query_.lastError().isValid()) database_.fail(query_.lastError());
    return false;
}

std::string Statement::text() {
    return query_.value(column_++).toString().toStdString();
}

std::int64_t Statement::number() {
    return query_.value(column_++).toLongLong();
}

double Statement::real() {
    const QVariant value = query_.value(column_++);
    return value.isNull() ? std::numeric_limits<double>::quiet_NaN() : value.toDouble();
}

std::optional<std::int64_t> Statement::numberOrNone() {
    const QVariant value = query_.value(column_++);
    return value.isNull() ? std::nullopt : std::optional<std::int64_t>(value.toLongLong());
}

std::optional<double> Statement::realOrNone() {
    const QVariant value = query_.value(column_++);
    return value.isNull() ? std::nullopt : std::optional(value.toDouble());
}

std::optional<Date> Statement::dateOrNone() {
    const QVariant value = query_.value(column_++);
    if (value.isNull()) return std::nullopt;
    const std::string text = value.toString().toStdString();
    const auto date = parseDate(text);
    if (!date) throw Error(ErrorKind::BadStore, "the collection holds \"" + text + "\" where a day should be");
    return date;
}

Date Statement::date() {
    const auto date = dateOrNone();
    if (!date) throw Error(ErrorKind::BadStore, "the collection lacks a day that should be there");
    return *date;
}

}  // namespace ringrule
