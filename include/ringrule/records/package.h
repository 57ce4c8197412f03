// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

#include "ringrule/records/store.h"

namespace ringrule {

struct PackageOptions {
    bool photos = true;  ///< copy the originals too
};

/// Writes a collection as a Frictionless Data Package into `folder` (not there yet, or empty): a CSV file for each kind
/// of record and `datapackage.json` with their Table Schemas. Texts that a spreadsheet would run are made harmless.
/// Whole or not at all. Throws `Error(BadUse)`, `Error(NoSpace)`, `Error(BadStore)`.
void exportPackage(const Store& store, const std::filesystem::path& folder, const PackageOptions& options = {});

/// What an import could not bring along.
struct PackageReport {
    std::int64_t records = 0;
    int photosLacking = 0;  ///< listed, but not in the package
};

/// Makes a collection in `folder` from a package that `exportPackage` wrote: the same collection, numbers, versions and
/// change log included. Whole or not at all. Throws `Error(BadData)` that names file and line, `Error(BadUse)`.
PackageReport importPackage(const std::filesystem::path& package, const std::filesystem::path& folder);

/// Writes the animals' sessions as Darwin Core occurrences (of captive animals) with their measures as
/// MeasurementOrFact, two CSV files and `meta.xml`, into `folder` (not there yet, or empty).
void exportDarwinCore(const Store& store, const std::filesystem::path& folder);

}  // namespace ringrule
