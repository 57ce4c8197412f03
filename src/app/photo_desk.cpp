// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/photo_desk.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "ringrule/error.h"
#include "ringrule/workflow/empty_box_photo.h"
#include "ringrule/workflow/stored_correction.h"

namespace ringrule {
namespace {

/// Whether a photo still reads as it was stored: another version of the program or of the box may see it otherwise.
bool agree(const Measurement& now, const Measurement& then) {
    if (now.standardLengthMm.known() != then.standardLengthMm.known()) return false;
    return !now.standardLengthMm.known() ||
           std::abs(now.standardLengthMm.value - then.standardLengthMm.value) < 0.05 * then.standardLengthMm.u95();
}

ShownAnimal shownFrom(const AnimalReading& reading) {
    ShownAnimal shown;
    shown.outline = reading.outline;
    shown.midline = reading.anatomy.midline;
    shown.landmarks = reading.anatomy.landmarks;
    return shown;
}

ShownAnimal shownFrom(const StoredMeasure& measure) {
    ShownAnimal shown;
    shown.outline.boundaryPx = measure.outlinePx;
    shown.midline.spinePx = measure.spinePx;
    shown.landmarks = measure.landmarks;
    return shown;
}

double leftEnd(const DeskAnimal& animal) {
    double left = std::numeric_limits<double>::infinity();
    for (const PixelPoint& point : animal.shown.outline.boundaryPx) left = std::min(left, point.x);
    return left;
}

}  // namespace

PhotoDesk::PhotoDesk(Collection& collection, QObject* parent) : QObject(parent), collection_(collection) {
    connect(&reader_, &PhotoReader::pictureRead, this, &PhotoDesk::takePicture);
    connect(&reader_, &PhotoReader::answered, this, &PhotoDesk::takeAnswer);
    connect(&reader_, &PhotoReader::failed, this, [this](PhotoId photo, const QString& sentence) {
        if (!row_ || row_->photo.id != photo) return;
        emit pictureFailed(sentence);
    });
    undoGroup_.addStack(&collection_.undoStack());
    connect(&collection_, &Collection::changedBack, this, [this](const QString&, std::optional<PhotoId> photo) {
        if (photo) forgetDraft(*photo);
    });
    chooseUndoStack();
}

PhotoDesk::~PhotoDesk() {
    dropDrafts();
}

void PhotoDesk::dropDrafts() {
    // A stack that goes clears itself and says so: nobody may listen then.
    for (const auto& [photo, draft] : drafts_) draft->undoStack().disconnect(this);
    drafts_.clear();
}

void PhotoDesk::setInFront(bool inFront) {
    inFront_ = inFront;
    chooseUndoStack();
}

void PhotoDesk::chooseUndoStack() {
    QUndoStack* corrections = inFront_ && draft() != nullptr ? &draft()->undoStack() : nullptr;
    const bool any = corrections != nullptr && (corrections->canUndo() || corrections->canRedo());
    undoGroup_.setActiveStack(any ? corrections : &collection_.undoStack());
}

void PhotoDesk::forgetDraft(PhotoId photo) {
    const auto found = drafts_.find(photo);
    if (found == drafts_.end()) return;
    found->second->undoStack().disconnect(this);
    drafts_.erase(found);
    chooseUndoStack();
}

void PhotoDesk::show(const PhotoListModel::Row& row, const std::vector<StoredPhoto>& next) {
    row_ = row;
    pixels_.reset();
    hasPicture_ = false;
    chooseUndoStack();
    PhotoRequest request;
    request.photo = row.photo.id;
    request.original = collection_.store().originalOf(row.photo);
    request.options.view = row.photo.view;
    request.stored = row.measures;
    std::string box = session() != nullptr ? session()->boxName : std::string();
    if (!row.measures.empty()) {
        box = row.measures.front().boxName;
        request.options.shape = row.measures.front().measurement.shape;
    }
    request.box = collection_.box(box);
    if (session() != nullptr) request.emptyBoxPhoto = emptyBoxPhotoKept(collection_.folder(), session()->id);
    if (draft() == nullptr) request.kept = KeptDrafts(collection_.folder()).of(row.photo.contentHash);
    std::vector<std::filesystem::path> ahead;
    for (const StoredPhoto& photo : next) ahead.push_back(collection_.store().originalOf(photo));
    // First: a picture that is at hand is shown at once, and its animals over it.
    rebuild();
    reader_.read(std::move(request), std::move(ahead));
}

void PhotoDesk::update(const PhotoListModel::Row& row) {
    if (!row_ || row_->photo.id != row.photo.id) return;
    row_ = row;
    rebuild();
}

void PhotoDesk::clear() {
    row_.reset();
    pixels_.reset();
    hasPicture_ = false;
    chooseUndoStack();
    rebuild();
}

void PhotoDesk::forgetAll() {
    clear();
    dropDrafts();
    chooseUndoStack();
}

PhotoDraft* PhotoDesk::draft() const {
    if (!row_) return nullptr;
    const auto found = drafts_.find(row_->photo.id);
    return found == drafts_.end() ? nullptr : found->second.get();
}

const Session* PhotoDesk::session() const {
    if (!row_) return nullptr;
    for (const Session& session : collection_.sessions())
        if (session.id == row_->photo.session) return &session;
    return nullptr;
}

void PhotoDesk::takePicture(PhotoId photo, const PhotoPicture& picture) {
    if (!row_ || row_->photo.id != photo) return;
    hasPicture_ = true;
    emit pictureRead(picture);
}

void PhotoDesk::takeAnswer(const PhotoAnswer& answer) {
    if (!row_ || row_->photo.id != answer.photo) return;
    pixels_ = answer.pixels;
    if (answer.reading && answer.reading->scale && draft() == nullptr) {
        auto draft = std::make_unique<PhotoDraft>(*answer.reading, row_->measures, answer.options);
        connect(draft.get(), &PhotoDraft::animalsChanged, this, &PhotoDesk::rebuild);
        undoGroup_.addStack(&draft->undoStack());
        connect(&draft->undoStack(), &QUndoStack::indexChanged, this, &PhotoDesk::chooseUndoStack);
        PhotoDraft* shown = draft.get();
        drafts_[answer.photo] = std::move(draft);
        chooseUndoStack();
        if (answer.corrected) {
            shown->restore(*answer.corrected);
            emit news(tr("Corrections of last time that were not accepted are shown again. Undo takes them back."));
        }
        connect(shown, &PhotoDraft::animalsChanged, this,
                [this, photo = answer.photo, hash = row_->photo.contentHash] { keepDraft(photo, hash); });
    }
    if (!answer.problem.isEmpty()) emit refused(answer.problem);
    rebuild();
}

void PhotoDesk::keepDraft(PhotoId photo, const std::string& contentHash) {
    const auto found = drafts_.find(photo);
    if (found == drafts_.end() || !collection_.isOpen()) return;
    KeptDrafts(collection_.folder()).keep(contentHash, correctionsOf(found->second->state()));
}

DeskAnimal PhotoDesk::deskAnimal(std::optional<StoredMeasure> stored, std::optional<std::size_t> place) const {
    DeskAnimal animal;
    animal.stored = std::move(stored);
    animal.place = place;
    if (animal.stored) animal.measurement = animal.stored->measurement;
    if (!place) {
        animal.shown = shownFrom(*animal.stored);
    } else {
        const AnimalReading& reading = draft()->reading().animals[*place];
        animal.changed = draft()->changed(*place);
        animal.brooding = draft()->mark(*place).brooding;
        // The reading has more to draw (holes, half-widths), but where it differs from what is stored it would mislead.
        const bool same = animal.stored && agree(reading.measurement, animal.stored->measurement);
        if (animal.changed) animal.measurement = reading.measurement;
        if (!animal.changed && !same) animal.readAgainMm = reading.measurement.standardLengthMm;
        animal.shown = animal.changed || same ? shownFrom(reading) : shownFrom(*animal.stored);
        animal.shown.movable = true;
    }
    if (animal.stored) animal.shown.label = collection_.animalCode(animal.stored->animal);
    return animal;
}

void PhotoDesk::rebuild() {
    animals_.clear();
    if (row_) {
        for (const StoredMeasure& measure : row_->measures) {
            if (seenNoMore(measure)) continue;
            std::optional<std::size_t> place;
            if (draft() != nullptr) {
                place = draft()->placeOf(measure.id);
                if (!place && measure.replaces) place = draft()->placeOf(*measure.replaces);
            }
            animals_.push_back(deskAnimal(measure, place));
        }
        if (draft() != nullptr)
            for (std::size_t k = 0; k < draft()->reading().animals.size(); ++k)
                if (draft()->changed(k) && !draft()->mark(k).stored) animals_.push_back(deskAnimal({}, k));
        std::stable_sort(animals_.begin(), animals_.end(),
                         [](const DeskAnimal& a, const DeskAnimal& b) { return leftEnd(a) < leftEnd(b); });
    }
    emit changed();
}

bool PhotoDesk::somethingToAccept() const {
    return std::any_of(animals_.begin(), animals_.end(), [](const DeskAnimal& animal) {
        return animal.measurement.measured() && (animal.changed || (animal.stored && !animal.stored->accepted));
    });
}

void PhotoDesk::accept() {
    if (!row_) return;
    const std::string keeper = session() != nullptr ? session()->keeper : std::string();
    std::vector<StoredMeasure> added;
    std::vector<MeasureId> accepted;
    std::vector<StateSpell> states;
    for (const DeskAnimal& animal : animals_) {
        if (animal.changed) {
            const AnimalReading& reading = draft()->reading().animals[*animal.place];
            added.push_back(animal.stored ? correctionOf(*animal.stored, reading, keeper)
                                          : newMeasureOf(row_->photo.id, draft()->reading(), reading, keeper));
            if (!animal.stored && reading.card) added.back().animal = collection_.animalOfCard(*reading.card);
            if (animal.brooding && added.back().animal && session() != nullptr)
                states.push_back({*added.back().animal, "brooding", session()->on, session()->on});
        } else if (animal.stored && !animal.stored->accepted && animal.measurement.measured()) {
            accepted.push_back(animal.stored->id);
        }
    }
    collection_.settle(row_->photo, added, accepted, states);
    if (draft() != nullptr) draft()->markAccepted(collection_.store().measuresOfPhoto(row_->photo.id));
    KeptDrafts(collection_.folder()).keep(row_->photo.contentHash, {});
    chooseUndoStack();
    rebuild();
}

}  // namespace ringrule
