// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/archive.h"

#include <array>
#include <cerrno>
#include <fstream>
#include <map>
#include <memory>

#include <archive.h>
#include <archive_entry.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include "records/collection_file.h"
#include "records/durable_file.h"
#include "records/new_folder.h"
#include "records/opening.h"
#include "records/photo_files.h"
#include "records/schema.h"
#include "records/server_copy.h"
#include "records/statement.h"
#include "records/utc_time.h"
#include "ringrule/error.h"

namespace ringrule {
namespace {

namespace fs = std::filesystem;

constexpr const char* kFormat = "ringrule-archive/1";
constexpr const char* kSpeciesFile = "species.json";  // the collection's own copy of the species' usual values
constexpr const char* kList = "ringrule-archive.json";

using Writer = std::unique_ptr<archive, int (*)(archive*)>;
using Entry = std::unique_ptr<archive_entry, void (*)(archive_entry*)>;

[[noreturn]] void failWriting(archive* from, const fs::path& file) {
    const int code = archive_errno(from);
    if (code == ENOSPC || code == EDQUOT)
        throw Error(ErrorKind::NoSpace, "the disk is full: no archive was made; make room and try again",
                    file.string());
    const char* const why = archive_error_string(from);
    throw Error(ErrorKind::BadStore, std::string("the archive cannot be written (") + (why ? why : "?") + ")",
                file.string());
}

void check(int result, archive* from, const fs::path& file) {
    if (result < ARCHIVE_WARN) failWriting(from, file);
}

void tell(const std::function<bool(double)>& progress, std::size_t done, std::size_t all) {
    if (progress && !progress(static_cast<double>(done) / static_cast<double>(std::max<std::size_t>(all, 1))))
        throw Error(ErrorKind::Stopped, "stopped: nothing was left behind");
}

/// Adds a text or a file under a name.
void beginEntry(archive* to, const std::string& name, std::uintmax_t bytes, const fs::path& file) {
    const Entry entry(archive_entry_new(), archive_entry_free);
    archive_entry_set_pathname(entry.get(), name.c_str());
    archive_entry_set_filetype(entry.get(), AE_IFREG);
    archive_entry_set_perm(entry.get(), 0644);
    archive_entry_set_size(entry.get(), static_cast<la_int64_t>(bytes));
    check(archive_write_header(to, entry.get()), to, file);
}

void addFile(archive* to, const std::string& name, const fs::path& source, const fs::path& file) {
    beginEntry(to, name, fs::file_size(source), file);
    std::ifstream in(source, std::ios::binary);
    std::array<char, 1 << 16> piece{};
    while (in) {
        in.read(piece.data(), piece.size());
        if (in.gcount() > 0 && archive_write_data(to, piece.data(), static_cast<std::size_t>(in.gcount())) < 0)
            failWriting(to, file);
    }
}

/// The files of a collection by their names in the archive, with their hashes.
struct Part {
    fs::path file;
    std::string hash;
};

std::map<std::string, Part> partsOf(const Store& store, const fs::path& databaseCopy) {
    std::map<std::string, Part> parts;
    parts["collection.sqlite"] = {databaseCopy, contentHashOf(databaseCopy)};
    const Database database(databaseCopy, Database::Mode::ReadOnly);
    Statement rows(database, "SELECT stored_name, content_hash FROM photo");
    rows.run();
    while (rows.next()) {
        const std::string name = rows.text();
        const fs::path original = store.folder() / "photos" / name;
        parts["photos/" + name] = {original, rows.text()};
        if (!fs::exists(original) || contentHashOf(original) != parts["photos/" + name].hash)
            throw Error(ErrorKind::BadStore, "this original is missing or altered: put it back, then archive",
                        original.string());
    }
    std::error_code none;
    for (const auto& entry : fs::directory_iterator(store.folder() / "calibration", none))
        if (entry.is_regular_file())
            parts["calibration/" + entry.path().filename().string()] = {entry.path(), contentHashOf(entry.path())};
    const fs::path species = store.folder() / kSpeciesFile;
    if (fs::exists(species, none)) parts[kSpeciesFile] = {species, contentHashOf(species)};
    return parts;
}

std::string listOf(const std::map<std::string, Part>& parts) {
    nlohmann::ordered_json files;
    for (const auto& [name, part] : parts) files[name] = part.hash;
    return nlohmann::ordered_json{{"format", kFormat}, {"made_at", nowUtc()}, {"sha256", files}}.dump(1);
}

// Reading back.

/// Whether a name may be written below the new folder: none that climbs out of it.
bool safeName(const std::string& name) {
    if (name == "collection.sqlite" || name == kSpeciesFile || name == kList) return true;
    for (const std::string folder : {"photos/", "calibration/"}) {
        const std::string rest = name.starts_with(folder) ? name.substr(folder.size()) : "";
        if (!rest.empty() && rest.find('/') == std::string::npos && rest != "." && rest != "..") return true;
    }
    return false;
}

[[noreturn]] void failReading(const fs::path& file, const std::string& why) {
    throw Error(ErrorKind::BadData, "this is not a whole archive of a collection (" + why + "); nothing was made of it",
                file.string());
}

void unpackOne(archive* from, const fs::path& target, const fs::path& file) {
    std::ofstream out(target, std::ios::binary);
    const void* piece = nullptr;
    std::size_t bytes = 0;
    la_int64_t offset = 0;
    int result = 0;
    while ((result = archive_read_data_block(from, &piece, &bytes, &offset)) == ARCHIVE_OK) {
        out.seekp(offset);
        out.write(static_cast<const char*>(piece), static_cast<std::streamsize>(bytes));
    }
    if (result != ARCHIVE_EOF) failReading(file, "it is cut or damaged");
    out.close();
    if (!out)
        throw Error(ErrorKind::NoSpace, "the disk is full: nothing was made; make room and try again", file.string());
}

void unpackAll(const fs::path& file, const fs::path& folder, const std::function<bool(double)>& progress) {
    const Writer reader(archive_read_new(), archive_read_free);
    archive_read_support_format_zip(reader.get());
    if (archive_read_open_filename(reader.get(), file.c_str(), 1 << 16) != ARCHIVE_OK)
        failReading(file, "it cannot be opened or is no ZIP file");
    const auto all = static_cast<std::size_t>(fs::file_size(file));
    archive_entry* entry = nullptr;
    int result = 0;
    while ((result = archive_read_next_header(reader.get(), &entry)) == ARCHIVE_OK) {
        const char* const name = archive_entry_pathname(entry);
        if (name == nullptr || archive_entry_filetype(entry) != AE_IFREG || !safeName(name))
            failReading(file, "it holds files that no collection has");
        unpackOne(reader.get(), folder / name, file);
        tell(progress, static_cast<std::size_t>(archive_filter_bytes(reader.get(), -1)), all);
    }
    if (result != ARCHIVE_EOF) failReading(file, "it is cut or damaged");
}

void compareWithList(const fs::path& file, const fs::path& folder) {
    std::ifstream in(folder / kList, std::ios::binary);
    const auto list = nlohmann::json::parse(in, nullptr, false);
    if (!list.is_object() || list.value("format", "") != kFormat || !list.contains("sha256"))
        failReading(file, "its list of files is missing or of another kind");
    std::size_t listed = 1;
    for (const auto& [name, hash] : list["sha256"].items()) {
        ++listed;
        if (!safeName(name) || !hash.is_string()) failReading(file, "its list of files is damaged");
        if (!fs::exists(folder / name)) failReading(file, name + " is missing");
        if (contentHashOf(folder / name) != hash.get<std::string>()) failReading(file, name + " was altered");
    }
    std::size_t there = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) there += entry.is_regular_file() ? 1 : 0;
    if (there != listed || !fs::exists(databaseOf(folder))) failReading(file, "its list of files is not whole");
    fs::remove(folder / kList);
}

/// Unpacks into an empty folder and compares with the list.
void unpackInto(const fs::path& folder, const fs::path& file, const std::function<bool(double)>& progress) {
    if (!fs::is_regular_file(file)) throw Error(ErrorKind::BadData, "there is no such archive", file.string());
    fs::create_directories(folder / "photos");
    fs::create_directories(folder / "calibration");
    unpackAll(file, folder, progress);
    compareWithList(file, folder);
    checkDatabaseFile(databaseOf(folder), Thoroughness::Whole);
}

}  // namespace

void writeArchive(const Store& store, const fs::path& file, const std::function<bool(double)>& progress) {
    const fs::path folder = file.has_parent_path() ? file.parent_path() : fs::path(".");
    std::error_code none;
    if (!fs::is_directory(folder, none))
        throw Error(ErrorKind::BadUse, "there is no such folder; make it first", folder.string());
    if (::access(folder.c_str(), W_OK) != 0)
        throw Error(ErrorKind::BadUse, "this folder may not be written to; name another", folder.string());
    const std::string unfinished = "." + file.filename().string() + ".part-" + std::to_string(::getpid());
    const UnfinishedFile part(file.parent_path() / unfinished);
    const UnfinishedFile copy(file.parent_path() / (unfinished + "-database"));
    copyToFile(CollectionFile::of(store), copy.path());
    const auto parts = partsOf(store, copy.path());
    {
        const Writer writer(archive_write_new(), archive_write_free);
        archive_write_set_format_zip(writer.get());
        check(archive_write_open_filename(writer.get(), part.path().c_str()), writer.get(), file);
        const std::string list = listOf(parts);
        beginEntry(writer.get(), kList, list.size(), file);
        if (archive_write_data(writer.get(), list.data(), list.size()) < 0) failWriting(writer.get(), file);
        std::size_t done = 0;
        for (const auto& [name, one] : parts) {
            tell(progress, done++, parts.size());
            // Photos are compressed already.
            if (name.starts_with("photos/"))
                archive_write_zip_set_compression_store(writer.get());
            else
                archive_write_zip_set_compression_deflate(writer.get());
            addFile(writer.get(), name, one.file, file);
        }
        check(archive_write_close(writer.get()), writer.get(), file);
    }
    putInPlace(part.path(), file);
}

void openArchive(const fs::path& file, const fs::path& folder, const std::function<bool(double)>& progress) {
    NewFolder fresh(folder);
    unpackInto(fresh.path(), file, progress);
    fresh.keep();
}

void openArchiveShared(const fs::path& file, const std::string& addressText, const fs::path& folder,
                       const std::function<bool(double)>& progress) {
    const ServerAddress address = readServerAddress(addressText);
    Database server(address);
    NewFolder fresh(folder);
    unpackInto(fresh.path(), file, progress);
    const fs::path database = databaseOf(fresh.path());
    {
        Database older(database, Database::Mode::ReadWrite);
        older.run("PRAGMA journal_mode = DELETE");
        migrate(older);
    }
    fillServer(server, address, folder, [&] {
        migrate(server);
        copyFromFile(database, server);
        fs::remove(database);
        fresh.keep();
    });
}

}  // namespace ringrule
