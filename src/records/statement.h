// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include <QSqlQuery>
#include <QVariant>

#include "records/database.h"
#include "ringrule/husbandry/records.h"

namespace ringrule {

/// A prepared statement: bind from left to right, run, then walk the rows and read their columns from left to right.
class Statement {
public:
    enum class Fetch {
        AtOnce,   ///< a server sends all rows; other statements may run meanwhile
        RowByRow  ///< for very many rows: none is kept, and no other statement of this connection may run meanwhile
    };
    Statement(const Database& database, const std::string& sql, Fetch fetch = Fetch::AtOnce);

    Statement& bind(const std::string& text);
    Statement& bind(std::int64_t number);
    Statement& bind(double number);  ///< NaN is stored as NULL
    Statement& bindNull();
    Statement& bind(int number) { return bind(std::int64_t{number}); }
    Statement& bind(bool yes) { return bind(std::int64_t{yes ? 1 : 0}); }
    Statement& bind(Date date) { return bind(formatDate(date)); }
    Statement& bind(const QVariant& value);  ///< as it came from another statement
    Statement& bind(const char*) = delete;   // would read as bool
    template <class Tag>
    Statement& bind(Id<Tag> id) {
        return bind(id.value);
    }
    template <class T>
    Statement& bind(const std::optional<T>& value) {
        return value ? bind(*value) : bindNull();
    }

    /// Runs it; the statement can be bound and run again.
    Statement& run();
    [[nodiscard]] int changedRows() const { return query_.numRowsAffected(); }

    /// Steps to the next row, if there is one.
    [[nodiscard]] bool next();
    [[nodiscard]] QVariant value();
    [[nodiscard]] std::string text();
    [[nodiscard]] std::int64_t number();
    [[nodiscard]] int smallNumber() { return static_cast<int>(number()); }
    [[nodiscard]] double real();  ///< NaN for NULL
    [[nodiscard]] bool yes() { return number() != 0; }
    [[nodiscard]] std::optional<std::int64_t> numberOrNone();
    [[nodiscard]] std::optional<double> realOrNone();
    [[nodiscard]] std::optional<Date> dateOrNone();
    [[nodiscard]] Date date();
    template <class IdType>
    [[nodiscard]] IdType id() {
        return IdType{number()};
    }

private:
    const Database& database_;
    QSqlQuery query_;
    int column_ = 0;
};

}  // namespace ringrule
