// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/day_text.h"

#include <QDateEdit>
#include <chrono>

namespace ringrule {
namespace {

DayFormat chosenFormat = DayFormat::YearFirst;

}  // namespace

void setDayFormat(DayFormat format) {
    chosenFormat = format;
}

DayFormat dayFormat() {
    return chosenFormat;
}

QString dayPattern() {
    switch (chosenFormat) {
        case DayFormat::DayFirst:
            return QStringLiteral("dd.MM.yyyy");
        case DayFormat::MonthFirst:
            return QStringLiteral("MM/dd/yyyy");
        case DayFormat::YearFirst:
            break;
    }
    return QStringLiteral("yyyy-MM-dd");
}

void writeDaysAsChosen(const QWidget& form) {
    for (auto* field : form.findChildren<QDateEdit*>()) {
        field->setDisplayFormat(dayPattern());
        // The style's arrow is wider than Qt reckons with.
        constexpr int kArrowAndEdges = 46;
        field->setMinimumWidth(field->fontMetrics().horizontalAdvance(QStringLiteral("0000-00-00")) + kArrowAndEdges);
    }
}

QDate qDateOf(Date day) {
    return QDate(1970, 1, 1).addDays(day.time_since_epoch().count());
}

Date dayOf(const QDate& date) {
    return Date(std::chrono::days(QDate(1970, 1, 1).daysTo(date)));
}

QString dayText(Date day) {
    return qDateOf(day).toString(dayPattern());
}

}  // namespace ringrule
