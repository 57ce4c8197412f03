// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/collection_file.h"
#include "records/csv_text.h"
#include "records/new_folder.h"
#include "records/record_values.h"
#include "records/statement.h"
#include "records/text_file.h"
#include "ringrule/records/measure_columns.h"
#include "ringrule/records/package.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kOccurrenceTerms[] = {"occurrenceID",       "basisOfRecord", "organismID",
                                            "scientificName",     "sex",           "individualCount",
                                            "establishmentMeans", "eventDate",     "recordedBy"};
constexpr const char* kMeasurementTerms[] = {
    "occurrenceID",      "measurementID",           "measurementType",
    "measurementValue",  "measurementAccuracy",     "measurementUnit",
    "measurementMethod", "measurementDeterminedBy", "measurementDeterminedDate",
    "measurementRemarks"};

template <std::size_t N>
std::string headOf(const char* const (&terms)[N]) {
    std::string head;
    for (const char* term : terms) head += (head.empty() ? "" : ",") + std::string(term);
    return head + "\r\n";
}

/// One line; texts of the keeper's are guarded.
std::string lineOf(std::initializer_list<std::string> cells) {
    std::string line;
    for (const std::string& cell : cells) line += csvCell(cell) + ",";
    line.back() = '\r';
    return line + "\n";
}

/// The files and terms, as the text guide of Darwin Core (http://rs.tdwg.org/dwc/text/) lays down.
std::string metaXml() {
    const std::string terms = "http://rs.tdwg.org/dwc/terms/";
    const auto part = [&](const std::string& element, const std::string& row, const std::string& file,
                          const std::string& id, auto first, auto last) {
        std::string xml = "  <" + element +
                          " encoding=\"UTF-8\" fieldsTerminatedBy=\",\" linesTerminatedBy=\"\\r\\n\" "
                          "fieldsEnclosedBy='\"' ignoreHeaderLines=\"1\" rowType=\"" +
                          terms + row +
                          "\">\n    <files>"
                          "<location>" +
                          file + "</location></files>\n    <" + id + " index=\"0\"/>\n";
        int index = 0;
        for (auto term = first; term != last; ++term, ++index)
            if (element == "core" || index > 0)
                xml += "    <field index=\"" + std::to_string(index) + "\" term=\"" + terms + *term + "\"/>\n";
        return xml + "  </" + element + ">\n";
    };
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<archive xmlns=\"http://rs.tdwg.org/dwc/text/\">\n" +
           part("core", "Occurrence", "occurrence.csv", "id", std::begin(kOccurrenceTerms),
                std::end(kOccurrenceTerms)) +
           part("extension", "MeasurementOrFact", "measurement.csv", "coreid", std::begin(kMeasurementTerms),
                std::end(kMeasurementTerms)) +
           "</archive>\n";
}

/// Each animal on each day on which it has a measure that counts, by photo or by hand.
void writeOccurrences(const Database& database, TextFile& out) {
    out.write(headOf(kOccurrenceTerms));
    Statement rows(database,
                   "SELECT a.code, a.species, a.sex, d.on_day, max(d.keeper) FROM (SELECT m.animal, s.on_day, s.keeper "
                   "FROM measure m JOIN photo p ON p.id = m.photo JOIN session s ON s.id = p.session WHERE m.accepted "
                   "= 1 UNION ALL SELECT animal, on_day, keeper FROM hand_measure) d JOIN animal a ON a.id = d.animal "
                   "GROUP BY a.id, d.on_day ORDER BY a.code, d.on_day");
    rows.run();
    while (rows.next()) {
        const std::string code = rows.text();
        const std::string species = rows.text();
        const std::string sex = rows.text();
        const std::string day = rows.text();
        out.write(lineOf({guarded(code + "/" + day), "LivingSpecimen", guarded(code), guarded(species),
                          sex == "unknown" ? "" : sex, "1", "captive", day, guarded(rows.text())}));
    }
}

std::string unitOf(std::string_view column) {
    return column.ends_with("_mm") ? "mm" : column.ends_with("_percent") ? "%" : "1";
}

void writePhotoMeasures(const Database& database, TextFile& out) {
    for (const MeasureColumn& measure : kMeasureColumns) {
        const std::string name(measure.column);
        Statement rows(database, "SELECT a.code, s.on_day, m.id, m." + name + ", m." + name + "_sd_random, m." + name +
                                     "_sd_shared, m.protocol, m.keeper, m.remarks, m.software_version FROM measure m "
                                     "JOIN photo p ON p.id = m.photo JOIN session s ON s.id = p.session JOIN animal a "
                                     "ON a.id = m.animal WHERE m.accepted = 1 AND m." +
                                     name +
                                     " IS NOT NULL AND NOT "
                                     "EXISTS (SELECT 1 FROM measure later WHERE later.replaces = m.id) "
                                     "ORDER BY a.code, s.on_day, m.id");
        rows.run();
        while (rows.next()) {
            const std::string occurrence = guarded(rows.text() + "/");
            const std::string day = rows.text();
            const std::string id = std::to_string(rows.number());
            const double value = rows.real();
            const double sdRandom = rows.real();
            const Estimate estimate{value, sdRandom, rows.real()};
            const std::string protocol = rows.text();
            const std::string keeper = guarded(rows.text());
            const std::string remarks = rows.text();
            out.write(lineOf({occurrence + day, "photo-" + id + "-" + name, name, shortNumber(value),
                              shortNumber(estimate.u95()), unitOf(name),
                              protocol + " from a photo, Ringrule " + rows.text(), keeper, day, remarks}));
        }
    }
}

void writeHandMeasures(const Database& database, TextFile& out) {
    Statement rows(database,
                   "SELECT a.code, h.on_day, h.id, h.measure, h.value, h.u95, h.method, h.keeper, h.note FROM "
                   "hand_measure h JOIN animal a ON a.id = h.animal ORDER BY a.code, h.on_day, h.id");
    rows.run();
    while (rows.next()) {
        const std::string occurrence = guarded(rows.text() + "/");
        const std::string day = rows.text();
        const std::string id = std::to_string(rows.number());
        const std::string name = rows.text();
        const std::string value = shortNumber(rows.real());
        const auto u95 = rows.realOrNone();
        const std::string method = guarded(rows.text());
        const std::string keeper = guarded(rows.text());
        out.write(lineOf({occurrence + day, "hand-" + id, name, value, u95 ? shortNumber(*u95) : "", unitOf(name),
                          method, keeper, day, guarded(rows.text())}));
    }
}

}  // namespace

void exportDarwinCore(const Store& store, const fs::path& folder) {
    const Database& database = CollectionFile::of(store);
    NewFolder fresh(folder);
    TextFile meta(fresh.path() / "meta.xml");
    meta.write(metaXml());
    meta.close();
    TextFile occurrences(fresh.path() / "occurrence.csv");
    TextFile measurements(fresh.path() / "measurement.csv");
    Store::reading(store, [&] {
        writeOccurrences(database, occurrences);
        measurements.write(headOf(kMeasurementTerms));
        writePhotoMeasures(database, measurements);
        writeHandMeasures(database, measurements);
    });
    occurrences.close();
    measurements.close();
    fresh.keep();
}

}  // namespace ringrule
