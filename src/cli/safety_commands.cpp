// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>
#include <memory>

#include <CLI/CLI.hpp>

#include "cli/collection_commands.h"
#include "cli/interrupt.h"
#include "ringrule/records/archive.h"
#include "ringrule/records/backup.h"
#include "ringrule/records/verify.h"

namespace ringrule::cli {
namespace {

struct SafetyOptions {
    std::string store;
    std::string file;
    std::string folder;
    std::string photos;
    bool list = false;
    int keep = -1;
};

std::function<bool(double)> shown(const char* stage) {
    return [progress = terminalProgress(), stage](double fraction) { return !progress || progress(fraction, stage); };
}

ExitStatus makeBackup(const SafetyOptions& options) {
    if (options.list) {
        for (const auto& file : backupsOf(options.store)) std::cout << file.filename().string() << '\n';
        return ExitStatus::Done;
    }
    Store store = Store::open(options.store);
    if (options.keep >= 0) {
        store.set("backups_kept", std::to_string(options.keep));
        std::cout << "Backups kept from now on: " << options.keep << '\n';
        return ExitStatus::Done;
    }
    std::cout << backUp(store).string() << '\n';
    return ExitStatus::Done;
}

ExitStatus restore(const SafetyOptions& options) {
    const Restored restored = restoreBackup(options.store, options.file);
    std::cout << "The collection is as it was in " << restored.backup.string() << '\n';
    if (!restored.replaced.empty()) std::cout << "What it was before is kept in " << restored.replaced.string() << '\n';
    for (const std::string& name : restored.missingPhotos)
        std::cerr << "ringrule: photos/" << name
                  << ": this original is missing; put it back from a copy of the folder\n";
    return restored.missingPhotos.empty() ? ExitStatus::Done : ExitStatus::NotMeasured;
}

ExitStatus pack(const SafetyOptions& options) {
    writeArchive(Store::open(options.store), options.file, shown("archiving"));
    std::cout << "The whole collection: " << options.file << '\n';
    return ExitStatus::Done;
}

ExitStatus unpack(const SafetyOptions& options) {
    const bool shared = options.folder.find("://") != std::string::npos;
    if (shared != !options.photos.empty())
        throw Error(ErrorKind::BadUse,
                    "a shared collection needs the address of its database and a folder that every workstation sees: "
                    "ringrule unpack FILE postgresql://USER@HOST/DATABASE --photos DIR");
    if (shared)
        openArchiveShared(options.file, options.folder, options.photos, shown("unpacking"));
    else
        openArchive(options.file, options.folder, shown("unpacking"));
    std::cout << "The collection of " << options.file << ": " << options.folder << '\n';
    return ExitStatus::Done;
}

}  // namespace

ExitStatus verify(const std::string& store) {
    const Verification found = verifyCollection(store, shown("reading photos"));
    for (const std::string& trouble : found.troubles) std::cerr << "ringrule: " << trouble << '\n';
    for (const std::string& record : found.toCorrect) std::cerr << "ringrule: " << record << '\n';
    for (const std::string& note : found.notes) std::cout << "Note: " << note << '\n';
    std::cout << "The database is whole; of " << found.photos << " originals " << found.troubles.size()
              << " are missing or altered\n";
    if (!found.toCorrect.empty()) std::cout << "Records to correct: " << found.toCorrect.size() << '\n';
    return found.whole() && found.toCorrect.empty() ? ExitStatus::Done : ExitStatus::NotMeasured;
}

void addSafetyCommands(CLI::App& app, Run& chosen) {
    auto checked = std::make_shared<SafetyOptions>();
    CLI::App* checking = app.add_subcommand("verify", "Reads a collection whole: database and every original");
    checking->add_option("--store", checked->store, "Folder of the collection")->required();
    checking->callback([&chosen, checked] { chosen = [checked] { return verify(checked->store); }; });

    auto saved = std::make_shared<SafetyOptions>();
    CLI::App* saving = app.add_subcommand("backup", "Makes a backup of the database now (one a day is made by itself)");
    saving->add_option("--store", saved->store, "Folder of the collection")->required();
    saving->add_flag("--list", saved->list, "List the backups instead");
    saving->add_option("--keep", saved->keep, "Set how many are kept instead; 0: no daily ones")
        ->check(CLI::Range(0, 10000));
    saving->callback([&chosen, saved] { chosen = [saved] { return makeBackup(*saved); }; });

    auto back = std::make_shared<SafetyOptions>();
    CLI::App* restoring =
        app.add_subcommand("restore", "Puts a backup in the collection's place; keeps what was there");
    restoring->add_option("--store", back->store, "Folder of the collection")->required();
    restoring->add_option("--from", back->file, "Name of the backup (the newest unless told)");
    restoring->callback([&chosen, back] { chosen = [back] { return restore(*back); }; });

    auto packed = std::make_shared<SafetyOptions>();
    CLI::App* packing = app.add_subcommand("archive", "Writes a whole collection, photos included, as one ZIP file");
    packing->add_option("--store", packed->store, "Folder of the collection")->required();
    packing->add_option("--out", packed->file, "The archive to write")->required();
    packing->callback([&chosen, packed] { chosen = [packed] { return pack(*packed); }; });

    auto opened = std::make_shared<SafetyOptions>();
    CLI::App* opening = app.add_subcommand("unpack", "Makes a collection from an archive");
    opening->add_option("FILE", opened->file, "The archive")->required();
    opening
        ->add_option("DIR", opened->folder,
                     "Folder of the new collection; for a shared one the address of an empty PostgreSQL database")
        ->required();
    opening->add_option("--photos", opened->photos, "Folder of a shared collection, which every workstation sees");
    opening->callback([&chosen, opened] { chosen = [opened] { return unpack(*opened); }; });
}

}  // namespace ringrule::cli
