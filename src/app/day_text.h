// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDate>
#include <QString>

#include "ringrule/husbandry/date.h"

class QWidget;

namespace ringrule {

/// How days are written in the window. What is stored, exported or printed keeps the first.
enum class DayFormat { YearFirst, DayFirst, MonthFirst };

/// From now on; pages that are shown are not drawn anew.
void setDayFormat(DayFormat format);
[[nodiscard]] DayFormat dayFormat();

/// A day as a keeper wants to read it: 2031-01-06, 06.01.2031 or 01/06/2031.
[[nodiscard]] QString dayText(Date day);
/// The same format for Qt's own date fields, e.g. "yyyy-MM-dd".
[[nodiscard]] QString dayPattern();

/// Every date field of a form in that format.
void writeDaysAsChosen(const QWidget& form);

[[nodiscard]] QDate qDateOf(Date day);
[[nodiscard]] Date dayOf(const QDate& date);

}  // namespace ringrule
