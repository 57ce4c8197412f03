// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/diet_pair_words.h"

#include <QCoreApplication>
#include <cmath>
#include <cstdio>

#include "app/core_text.h"
#include "ringrule/sentence.h"

namespace ringrule {
namespace {

class DietPairWords {
    Q_DECLARE_TR_FUNCTIONS(DietPairWords)

public:
    DietPairWords(const DietEffects& effects, const DietEffect& pair) : effects_(effects), pair_(pair) {}

    [[nodiscard]] QString seen(const QString& firstDiet, const QString& secondDiet) const {
        const bool less = pair_.effect < 0.0;
        QString pattern;
        if (effects_.tanksAreUnits)
            pattern = less ? tr("Tanks on %1 grew by %2 less than on %3%4.")
                           : tr("Tanks on %1 grew by %2 more than on %3%4.");
        else
            pattern = less ? tr("Animals on %1 grew by %2 less than on %3%4.")
                           : tr("Animals on %1 grew by %2 more than on %3%4.");
        // Names are put in together: one may hold a "%2" of its own.
        return filled(pattern, {secondDiet, inUnit(std::abs(pair_.effect)), firstDiet, interval()});
    }

    [[nodiscard]] QString verdict() const {
        switch (pair_.verdict) {
            case DietVerdict::Differ:
                return tr("That is more than chance explains.");
            case DietVerdict::Alike:
                return filled(tr("A difference that matters (%1 or more) is ruled out."),
                              {inUnit(pair_.enough.difference)});
            case DietVerdict::TooFewToTell:
                break;
        }
        return tr("Too few to tell.");
    }

    /// What would be enough; of a pair that is too few to tell.
    [[nodiscard]] QStringList more() const {
        const bool tanks = effects_.tanksAreUnits;
        if (!pair_.difference)
            return {tanks
                        ? tr("One of the two was given in a single tank, which does not show how much tanks differ "
                             "anyway; give each diet in two or more.")
                        : tr("One of the two was given to a single animal, which does not show how much animals differ "
                             "anyway; give each diet in two or more.")};
        QStringList told;
        if (pair_.enough.permutationCannot)
            told << (tanks ? tr("With so few tanks even wholly different growth could be chance.")
                           : tr("With so few animals even wholly different growth could be chance."));
        if (const QString enough = enoughPattern(); !enough.isEmpty())
            told << filled(enough,
                           {inUnit(pair_.enough.difference), QString::number(pair_.enough.unitsPerDiet.value_or(0)),
                            rounded(std::ceil(pair_.enough.months.value_or(0.0)), 3)});
        return told;
    }

private:
    static QString filled(const QString& pattern, const QStringList& values) {
        Sentence sentence{pattern.toStdString(), {}};
        for (const QString& value : values) sentence.values.push_back(value.toStdString());
        return QString::fromStdString(sentence.text());
    }

    static QString rounded(double value, int digits = 2) { return ownFigure(QString::asprintf("%.*g", digits, value)); }

    [[nodiscard]] QString inUnit(double value) const {
        return filled(effects_.unit == EffectUnit::PercentPerDay ? tr("%1 % a day") : tr("%1 mm a day"),
                      {rounded(value)});
    }

    static QString lessOrMore(double difference) {
        return filled(difference < 0.0 ? tr("%1 less") : tr("%1 more"), {rounded(std::abs(difference))});
    }

    [[nodiscard]] QString interval() const {
        if (!pair_.difference) return {};
        const QString from = lessOrMore(pair_.difference->lower95);
        const QString to = lessOrMore(pair_.difference->upper95);
        if (!pair_.permutation) return filled(tr(" (95 % interval %1 to %2)"), {from, to});
        return filled(tr(" (95 % interval %1 to %2; permutation p %3)"), {from, to, rounded(pair_.adjustedP)});
    }

    /// %1 a difference, %2 a count, %3 months; empty when nothing is enough.
    [[nodiscard]] QString enoughPattern() const {
        const EnoughToTell& enough = pair_.enough;
        const bool months = enough.months && !enough.permutationCannot;
        if (!(enough.difference > 0.0)) return {};
        if (effects_.tanksAreUnits) {
            // Watching tanks for longer does not help: the engine tells no months of them.
            return enough.unitsPerDiet
                       ? tr("To tell a difference of %1 would take about %2 tanks on each diet over the same time.")
                       : QString();
        }
        if (enough.unitsPerDiet && months)
            return tr(
                "To tell a difference of %1 would take about %2 animals on each diet over the same time, or these "
                "animals over about %3 months.");
        if (enough.unitsPerDiet)
            return tr("To tell a difference of %1 would take about %2 animals on each diet over the same time.");
        return months ? tr("To tell a difference of %1 would take these animals over about %3 months.") : QString();
    }

    const DietEffects& effects_;
    const DietEffect& pair_;
};

}  // namespace

QString dietPairSentence(const DietEffects& effects, const DietEffect& pair, const QString& firstDiet,
                         const QString& secondDiet) {
    const DietPairWords words(effects, pair);
    QStringList told{words.seen(firstDiet, secondDiet), words.verdict()};
    if (pair.verdict == DietVerdict::TooFewToTell) told << words.more();
    return told.join(QLatin1Char(' '));
}

}  // namespace ringrule
