// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>
#include <vector>

#include "ringrule/sentence.h"
#include "ringrule/statistics/estimate.h"

namespace ringrule {

/// A fixed word or sentence of the engine (a remark, a measure's name, a landmark) in the language that is spoken; in
/// English where the language has none. Their translations are in translations/core_*.ts.
[[nodiscard]] QString coreText(std::string_view english);
/// A sentence of the engine with its figures in their places.
[[nodiscard]] QString coreText(const Sentence& sentence);
/// A sentence that holds figures or names: its own translation when it has one, else that of its reason's id, which
/// says the same without figures, else English.
[[nodiscard]] QString reasonText(std::string_view reason, const std::string& sentence);
/// A number as the engine writes it ("12.5") with the decimal sign of the language that is spoken; text that is none
/// stays.
[[nodiscard]] QString ownFigure(QString figure);
/// `numberWithInterval` in the language that is spoken: "132,4 ± 0,6".
[[nodiscard]] QString numberText(const Estimate& estimate, std::string_view unit = {});
/// One after the other.
[[nodiscard]] QString coreText(const std::vector<Sentence>& sentences);

}  // namespace ringrule
