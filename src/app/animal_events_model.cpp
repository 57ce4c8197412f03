// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/animal_events_model.h"

#include <algorithm>
#include <set>

#include "app/core_text.h"
#include "app/day_text.h"
#include "app/decision_panel.h"

namespace ringrule {
namespace {

QString eventText(const std::string& text) {
    return QString::fromStdString(text);
}

QString dayOfRecord(const std::string& iso) {
    const auto day = parseDate(iso);
    return day ? dayText(*day) : eventText(iso);
}

QString spanOf(const Record& record) {
    if (const std::string on = record.text("on_day"); !on.empty()) return dayOfRecord(on);
    const std::string to = record.text("to_day");
    const QString from = dayOfRecord(record.text("from_day"));
    return to.empty() ? AnimalEventsModel::tr("since %1").arg(from)
                      : QStringLiteral("%1 – %2").arg(from, dayOfRecord(to));
}

QString eventWords(const std::string& kind, const Record& record) {
    QStringList words;
    const auto add = [&](const char* field) {
        if (const std::string text = record.text(field); !text.empty()) words << eventText(text);
    };
    const auto addChoice = [&](const char* field) {
        if (const std::string text = record.text(field); !text.empty())
            words << coreText(text).replace('-', ' ').replace('_', ' ');
    };
    if (kind == "stay") add("tank");
    if (kind == "diet-spell") add("diet");
    if (kind == "state") addChoice("state");
    if (kind == "note") add("text");
    if (kind == "feeding") {
        add("food");
        addChoice("outcome");
    }
    if (kind == "treatment")
        for (const char* field : {"what", "dose", "ordered_by"}) add(field);
    if (kind == "decision") {
        addChoice("finding");
        words << decisionWords(record.text("decision"));
    }
    if (kind == "hand-measure") {
        addChoice("measure");
        words << eventText(record.text("value"));
        add("method");
    }
    if (kind != "note") add("note");
    // Of a whole tank.
    if (kind != "stay" && !record.text("tank").empty()) words.prepend(eventText(record.text("tank")));
    return words.join(QStringLiteral("  ·  "));
}

}  // namespace

const std::vector<std::string>& animalEventKinds() {
    static const std::vector<std::string> kinds{"note",      "feeding", "diet-spell",  "state",
                                                "treatment", "stay",    "hand-measure"};
    return kinds;
}

QString eventKindWords(const std::string& kind) {
    if (kind == "note") return AnimalEventsModel::tr("Note");
    if (kind == "feeding") return AnimalEventsModel::tr("Feeding");
    if (kind == "diet-spell") return AnimalEventsModel::tr("Diet");
    if (kind == "state") return AnimalEventsModel::tr("State");
    if (kind == "treatment") return AnimalEventsModel::tr("Treatment");
    if (kind == "stay") return AnimalEventsModel::tr("Tank");
    if (kind == "hand-measure") return AnimalEventsModel::tr("Measure by hand");
    return AnimalEventsModel::tr("Decision");
}

AnimalEventsModel::AnimalEventsModel(const Collection& collection, QObject* parent)
    : QAbstractTableModel(parent), collection_(collection) {}

void AnimalEventsModel::show(std::optional<AnimalId> animal) {
    std::vector<Row> rows;
    const Animal* known = animal ? collection_.animal(*animal) : nullptr;
    if (known != nullptr) {
        std::vector<std::string> kinds = animalEventKinds();
        kinds.emplace_back("decision");
        std::set<std::string> tanks;
        for (const Record& stay : collection_.store().records("stay"))
            if (stay.text("animal") == known->code && stay.text("to_day").empty()) tanks.insert(stay.text("tank"));
        for (const std::string& kind : kinds)
            for (Record& record : collection_.store().records(kind)) {
                const bool ofTank = record.text("animal").empty() && tanks.contains(record.text("tank"));
                if (record.text("animal") != known->code && !ofTank) continue;
                std::string day = record.text("on_day").empty() ? record.text("from_day") : record.text("on_day");
                rows.push_back({kind, std::move(record), std::move(day)});
            }
    }
    std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return a.day > b.day; });
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

int AnimalEventsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int AnimalEventsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{ColumnCount};
}

QVariant AnimalEventsModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::ToolTipRole && index.column() == What) return eventWords(row.kind, row.record);
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
        case Day:
            return spanOf(row.record);
        case Kind:
            return eventKindWords(row.kind);
        case What:
            return eventWords(row.kind, row.record);
        default:
            return eventText(row.record.text("keeper"));
    }
}

QVariant AnimalEventsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= ColumnCount) return {};
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(Qt::AlignVCenter | Qt::AlignLeft);
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case Day:
            return tr("Day");
        case Kind:
            return tr("Kind");
        case What:
            return tr("What");
        default:
            return tr("Keeper");
    }
}

}  // namespace ringrule
