// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "app/collection.h"
#include "ringrule/optics/box_setup.h"
#include "ringrule/optics/box_writer.h"
#include "ringrule/optics/lens_calibration.h"
#include "ringrule/sheets/plate_sheet.h"
#include "ringrule/workflow/check_box.h"

namespace ringrule {

/// What a keeper asks for when a new box is made.
struct NewBox {
    std::string name;
    PlateSize size;
    PlateSheetOptions sheet;
    std::filesystem::path pdf;  ///< where the plate is drawn
};

/// The measuring box that the box page works on: its file in the collection, what is set up, and what its checks found.
class CurrentBox : public QObject {
    Q_OBJECT

public:
    explicit CurrentBox(Collection& collection, QObject* parent = nullptr);

    [[nodiscard]] const std::vector<BoxFile>& files() const { return files_; }
    /// Of `files()`, or −1 when the collection has no box.
    [[nodiscard]] int index() const { return index_; }
    void choose(int index);

    /// Precondition for all that follow: `index() >= 0`.
    [[nodiscard]] const Box& box() const { return files_[static_cast<std::size_t>(index_)].box; }
    [[nodiscard]] const std::filesystem::path& file() const { return files_[static_cast<std::size_t>(index_)].path; }
    [[nodiscard]] const std::vector<SetupStep>& steps() const { return steps_; }
    /// Oldest first.
    [[nodiscard]] const std::vector<PastBoxCheck>& checks() const { return checks_; }
    /// Today by this machine's clock, "YYYY-MM-DD".
    [[nodiscard]] static std::string machineDay();
    /// The cards of the collection's animals, as "1-4,7", and the names to print on them.
    [[nodiscard]] std::string cardNumbers() const;
    [[nodiscard]] std::map<int, std::string> cardNames() const;

    // Each of these writes the box's file and says `changed`. They throw what the writer throws.
    void make(const NewBox& wanted);
    void add(const std::filesystem::path& boxFile);
    void correctPrint(const PrintScale& scale);
    void useLens(const FittedLens& fitted);
    void setWater(const Media& media);
    void setAnimalPlane(const AnimalPlane& plane);
    /// Keeps what a photo said of the box in the collection.
    void keepCheck(const BoxCheckRecord& check);

signals:
    void changed();

private:
    /// `chosen` by value: it may lie in the list that is read anew.
    void readFiles(std::filesystem::path chosen = {});
    void look();

    Collection& collection_;
    std::vector<BoxFile> files_;
    int index_ = -1;
    std::vector<PastBoxCheck> checks_;
    std::vector<SetupStep> steps_;
};

}  // namespace ringrule
