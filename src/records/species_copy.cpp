// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/records/species_copy.h"

#include <algorithm>

#include <unistd.h>

#include "records/collection_file.h"
#include "records/durable_file.h"
#include "records/text_file.h"

namespace ringrule {

namespace fs = std::filesystem;

fs::path keepSpeciesText(Store& store, const std::string& text, const std::string& keeper) {
    const fs::path own = store.folder() / "species.json";
    const UnfinishedFile fresh(store.folder() / (".species.json.part-" + std::to_string(::getpid())));
    TextFile out(fresh.path());
    out.write(text);
    out.close();
    fs::path former;
    store.together([&] {
        if (fs::exists(own)) {
            int number = 1;
            do {
                former = store.folder() / "backups" / ("species-" + std::to_string(number++) + ".json");
            } while (fs::exists(former));
            fs::create_directories(former.parent_path());
            copyWhole(own, former);
        }
        logChange(CollectionFile::of(store), {{},
                                              keeper,
                                              "set",
                                              "species.json",
                                              former.empty() ? "as shipped" : "backups/" + former.filename().string(),
                                              std::to_string(std::count(text.begin(), text.end(), '\n')) + " lines"});
        putInPlace(fresh.path(), own);
    });
    return former;
}

}  // namespace ringrule
