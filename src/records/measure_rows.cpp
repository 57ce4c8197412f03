// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/measure_rows.h"

#include <algorithm>
#include <array>
#include <map>
#include <unordered_map>

#include "records/box_standings.h"
#include "records/polyline_text.h"
#include "records/record_rows.h"
#include "ringrule/records/measure_columns.h"

namespace ringrule {
namespace {

constexpr std::array kPlainColumns{
    "photo",          "animal",           "brood",          "animal_index", "card", "box_name", "software_version",
    "keeper",         "replaces",         "accepted",       "shape",        "view", "protocol", "remarks",
    "refusal_reason", "refusal_sentence", "ventral_on_left"};

/// The columns of a measure, each with `before` put before its name.
std::string columnList(const std::string& before) {
    std::string list;
    for (const char* column : kPlainColumns) list += (list.empty() ? "" : ", ") + before + column;
    for (const MeasureColumn& measure : kMeasureColumns) {
        const std::string name(measure.column);
        for (const char* part : {"", "_sd_random", "_sd_shared"}) list += ", " + before + name + part;
    }
    return list;
}

/// What the checks of a box say in a remark of the measures taken with it.
std::optional<Remark> remarkOf(const BoxJudgement& judgement) {
    if (judgement.state == BoxState::Failed) return Remark::BoxCheckFailed;
    // A box that no rod has checked yet is told once a session, like one that was never checked.
    if (judgement.state == BoxState::Stale && judgement.reason != "rod-check-missing") return Remark::BoxCheckStale;
    return std::nullopt;
}

/// Remarks as they are stored: what the checks of the box say is told anew at each reading.
std::vector<Remark> storedRemarks(std::vector<Remark> remarks) {
    std::erase_if(remarks, [](Remark r) { return r == Remark::BoxCheckFailed || r == Remark::BoxCheckStale; });
    return remarks;
}

std::string insertSql() {
    std::string marks = "?";
    for (std::size_t i = 0; i < kPlainColumns.size() + 3 * kMeasureColumns.size(); ++i) marks += ", ?";
    return "INSERT INTO measure (id, " + columnList("") + ") VALUES (" + marks + ")";
}

void bindEstimate(Statement& row, const Estimate& estimate) {
    if (estimate.known()) {
        row.bind(estimate.value).bind(estimate.sdRandom).bind(estimate.sdShared);
    } else {
        row.bindNull().bindNull().bindNull();
    }
}

Estimate readEstimate(Statement& row) {
    Estimate estimate;
    estimate.value = row.real();
    const double sdRandom = row.real();
    const double sdShared = row.real();
    if (estimate.known()) {
        estimate.sdRandom = sdRandom;
        estimate.sdShared = sdShared;
    }
    return estimate;
}

template <class IdType>
std::optional<IdType> readId(Statement& row) {
    const auto number = row.numberOrNone();
    return number ? std::optional(IdType{*number}) : std::nullopt;
}

/// Columns that every reading of measures begins with.
constexpr const char* kFirst = "m.id, m.row_version, s.on_day, ";
constexpr const char* kFrom = " FROM measure m JOIN photo p ON p.id = m.photo JOIN session s ON s.id = p.session ";
constexpr const char* kCurrent = " NOT EXISTS (SELECT 1 FROM measure later WHERE later.replaces = m.id)";

/// Remarks by their text: thousands of measures share a few lists.
class RemarkLists {
public:
    const std::vector<Remark>& of(const std::string& text) {
        const auto found = lists_.find(text);
        return found != lists_.end() ? found->second : lists_.emplace(text, remarksOfText(text)).first->second;
    }

private:
    std::unordered_map<std::string, std::vector<Remark>> lists_;
};

/// The columns from `shape` to `refusal_sentence`, and the remark that the checks of the box lead to.
void readWords(Statement& row, std::optional<Remark> ofBox, RemarkLists& remarks, Measurement& measurement) {
    measurement.shape = shapeFromName(row.text()).value_or(Shape::Unknown);
    measurement.view = viewFromName(row.text()).value_or(View::Side);
    measurement.protocol = row.text();
    measurement.remarks = remarks.of(row.text());
    if (ofBox) measurement.remarks.push_back(*ofBox);
    const std::string reason = row.text();
    const std::string sentence = row.text();
    if (!reason.empty()) measurement.refusal = Refusal{reason, sentence};
}

StoredMeasure readMeasure(Statement& row, const BoxStandings& standings, RemarkLists& remarks) {
    StoredMeasure stored;
    stored.id = row.id<MeasureId>();
    stored.version = row.number();
    stored.sessionOn = row.date();
    stored.photo = row.id<PhotoId>();
    stored.animal = readId<AnimalId>(row);
    stored.brood = readId<BroodId>(row);
    stored.animalIndex = row.smallNumber();
    if (const auto card = row.numberOrNone()) stored.card = static_cast<int>(*card);
    stored.boxName = row.text();
    stored.softwareVersion = row.text();
    stored.keeper = row.text();
    stored.replaces = readId<MeasureId>(row);
    stored.accepted = row.yes();
    Measurement& measurement = stored.measurement;
    readWords(row, remarkOf(standings.on(stored.boxName, stored.sessionOn)), remarks, measurement);
    stored.landmarks.ventralOnLeft = row.yes();
    for (const MeasureColumn& measure : kMeasureColumns) measurement.*measure.member = readEstimate(row);
    return stored;
}

void readLandmarks(const Database& database, const std::string& condition, std::int64_t value,
                   std::vector<StoredMeasure>& measures) {
    std::map<MeasureId, StoredMeasure*> byId;
    for (StoredMeasure& measure : measures) byId[measure.id] = &measure;
    Statement rows(database,
                   "SELECT l.measure, l.name, l.x_px, l.y_px, l.sd_along_px, l.moved_by_hand FROM landmark l "
                   "JOIN measure m ON m.id = l.measure WHERE " +
                       condition);
    rows.bind(value).run();
    while (rows.next()) {
        const auto found = byId.find(rows.id<MeasureId>());
        if (found == byId.end()) continue;
        const std::string name = rows.text();
        for (const LandmarkColumn& column : kLandmarkColumns) {
            if (column.key != name) continue;
            Landmark landmark;
            landmark.atPx.x = rows.real();
            landmark.atPx.y = rows.real();
            landmark.sdAlongPx = rows.real();
            landmark.movedByHand = rows.yes();
            found->second->landmarks.*column.member = landmark;
        }
    }
}

std::vector<StoredMeasure> read(const Database& database, const std::string& condition, std::int64_t value) {
    const BoxStandings standings(database);
    RemarkLists remarks;
    Statement rows(database, std::string("SELECT ") + kFirst + columnList("m.") +
                                 ", coalesce(l.outline_px, '[]'), coalesce(l.spine_px, '[]')" + kFrom +
                                 "LEFT JOIN measure_line l ON l.measure = m.id WHERE " + condition +
                                 " ORDER BY m.photo, m.animal_index, m.id");
    rows.bind(value).run();
    std::vector<StoredMeasure> measures;
    while (rows.next()) {
        measures.push_back(readMeasure(rows, standings, remarks));
        measures.back().outlinePx = polylineOfText(rows.text());
        measures.back().spinePx = polylineOfText(rows.text());
    }
    readLandmarks(database, condition, value, measures);
    return measures;
}

}  // namespace

MeasureWriter::MeasureWriter(const Database& database)
    : row_(database, insertSql()),
      line_(database, "INSERT INTO measure_line (measure, outline_px, spine_px) VALUES (?, ?, ?)"),
      landmark_(database,
                "INSERT INTO landmark (measure, name, x_px, y_px, sd_along_px, moved_by_hand) "
                "VALUES (?, ?, ?, ?, ?, ?)"),
      next_(nextNumber(database, "measure")) {}

MeasureId MeasureWriter::add(const StoredMeasure& stored) {
    const Measurement& measurement = stored.measurement;
    const MeasureId id{next_++};
    row_.bind(id)
        .bind(stored.photo)
        .bind(stored.animal)
        .bind(stored.brood)
        .bind(stored.animalIndex)
        .bind(stored.card)
        .bind(stored.boxName)
        .bind(stored.softwareVersion)
        .bind(stored.keeper)
        .bind(stored.replaces)
        .bind(stored.accepted)
        .bind(std::string(shapeName(measurement.shape)))
        .bind(std::string(viewName(measurement.view)))
        .bind(measurement.protocol)
        .bind(textOfRemarks(storedRemarks(measurement.remarks)));
    if (measurement.refusal) {
        row_.bind(measurement.refusal->reason).bind(measurement.refusal->sentence);
    } else {
        row_.bindNull().bindNull();
    }
    row_.bind(stored.landmarks.ventralOnLeft);
    for (const MeasureColumn& column : kMeasureColumns) bindEstimate(row_, measurement.*column.member);
    row_.run();
    line_.bind(id).bind(textOfPolyline(stored.outlinePx)).bind(textOfPolyline(stored.spinePx)).run();
    for (const LandmarkColumn& column : kLandmarkColumns) {
        const auto& landmark = stored.landmarks.*column.member;
        if (!landmark) continue;
        landmark_.bind(id)
            .bind(std::string(column.key))
            .bind(landmark->atPx.x)
            .bind(landmark->atPx.y)
            .bind(landmark->sdAlongPx)
            .bind(landmark->movedByHand)
            .run();
    }
    return id;
}

std::vector<StoredMeasure> readMeasures(const Database& database, const std::string& condition, std::int64_t value) {
    return read(database, condition + " AND" + kCurrent, value);
}

std::vector<StoredMeasure> readMeasuresEvenReplaced(const Database& database, const std::string& condition,
                                                    std::int64_t value) {
    return read(database, condition, value);
}

struct DayReader::Tables {
    explicit Tables(const Database& database, const std::string& sql) : standings(database), rows(database, sql) {}
    BoxStandings standings;
    RemarkLists remarks;
    Statement rows;
};

DayReader::DayReader(const Database& database) {
    std::string sql =
        "SELECT m.id, s.on_day, m.photo, m.animal, m.animal_index, m.box_name, m.shape, m.view, m.protocol, m.remarks, "
        "m.refusal_reason, m.refusal_sentence";
    for (const MeasureColumn& measure : kMeasureColumns) {
        const std::string name = "m." + std::string(measure.column);
        sql += ", " + name + ", " + name + "_sd_random, " + name + "_sd_shared";
    }
    sql += kFrom + std::string("WHERE s.on_day BETWEEN ? AND ? AND m.accepted = 1 AND m.animal IS NOT NULL AND") +
           kCurrent;
    tables_ = std::make_unique<Tables>(database, sql);
}

DayReader::~DayReader() = default;

void DayReader::read(Date from, Date to, std::vector<DayMeasure>& measures) {
    Statement& row = tables_->rows;
    row.bind(from).bind(to).run();
    while (row.next()) {
        DayMeasure& one = measures.emplace_back();
        one.id = row.id<MeasureId>();
        one.on = row.date();
        one.photo = row.id<PhotoId>();
        one.animal = row.id<AnimalId>();
        one.animalIndex = row.smallNumber();
        const std::string box = row.text();
        readWords(row, remarkOf(tables_->standings.on(box, one.on)), tables_->remarks, one.measurement);
        for (const MeasureColumn& measure : kMeasureColumns) one.measurement.*measure.member = readEstimate(row);
    }
}

}  // namespace ringrule
