// SPDX-License-Identifier: GPL-3.0-or-later
#include "ringrule/workflow/measure_session.h"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <mutex>
#include <new>
#include <thread>

#include "ringrule/imaging/threads.h"

namespace ringrule {
namespace {

/// One photo's result. Nothing is thrown: what leaves a worker thread as an exception would end the program.
PhotoResult measureOne(const PhotoTask& task, const Box& box, PhotoOptions options) {
    PhotoResult result;
    result.task = task;
    options.view = task.view;
    try {
        result.reading = measurePhoto(task.path, box, options);
    } catch (const Error& error) {
        result.errorMessage = error.what();
    } catch (const std::bad_alloc&) {
        result.errorMessage = task.path.string() + ": not enough memory for this photo; use fewer jobs";
    } catch (const std::exception& error) {
        result.errorMessage = task.path.string() + ": could not be worked on (" + error.what() + ")";
    } catch (...) {
        result.errorMessage = task.path.string() + ": could not be worked on";
    }
    return result;
}

/// What the workers and the calling thread share.
struct Desk {
    explicit Desk(std::size_t photos) : results(photos) {}

    std::mutex mutex;
    std::condition_variable oneMore;
    std::vector<std::optional<PhotoResult>> results;
    std::size_t done = 0;
    std::atomic<std::size_t> next{0};
    std::atomic<bool> stop{false};
};

/// Tells the workers to stop when the calling thread leaves, by an exception too; their threads are joined after.
class StopAtExit {
public:
    explicit StopAtExit(Desk& desk) : desk_(desk) {}
    ~StopAtExit() { desk_.stop = true; }
    StopAtExit(const StopAtExit&) = delete;
    StopAtExit& operator=(const StopAtExit&) = delete;

private:
    Desk& desk_;
};

void work(Desk& desk, const std::vector<PhotoTask>& tasks, const Box& box, const PhotoOptions& options) {
    while (!desk.stop) {
        const std::size_t mine = desk.next++;
        if (mine >= tasks.size()) return;
        PhotoResult result = measureOne(tasks[mine], box, options);
        const std::lock_guard lock(desk.mutex);
        desk.results[mine] = std::move(result);
        ++desk.done;
        desk.oneMore.notify_one();
    }
}

void tell(const Progress& progress, std::size_t done, std::size_t all) {
    if (!progress) return;
    const double fraction = all == 0 ? 1.0 : static_cast<double>(done) / static_cast<double>(all);
    if (!progress(fraction, "measuring photos")) {
        throw Error(ErrorKind::Stopped, "stopped before every photo was measured");
    }
}

/// Hands results on, in order, until all are there.
void collect(Desk& desk, const Progress& progress, const OnResult& onResult) {
    const std::size_t all = desk.results.size();
    std::size_t handedOn = 0;
    std::size_t told = 0;
    tell(progress, 0, all);
    while (told < all) {
        std::unique_lock lock(desk.mutex);
        desk.oneMore.wait(lock, [&] { return desk.done > told; });
        told = desk.done;
        std::size_t ready = handedOn;
        while (ready < all && desk.results[ready]) ++ready;
        lock.unlock();
        // A result that is there is no longer touched by any worker, so it can be read without the lock.
        for (; handedOn < ready; ++handedOn) {
            if (onResult) onResult(*desk.results[handedOn]);
        }
        tell(progress, told, all);
    }
}

}  // namespace

std::vector<PhotoResult> measurePhotos(const std::vector<PhotoTask>& tasks, const Box& box, const PhotoOptions& options,
                                       int jobs, const Progress& progress, const OnResult& onResult) {
    useOneThreadPerPhoto();
    const std::size_t wanted =
        jobs > 0 ? static_cast<std::size_t>(jobs) : std::max<std::size_t>(1, std::thread::hardware_concurrency());
    Desk desk(tasks.size());
    {
        std::vector<std::jthread> threads;
        const StopAtExit stopAtExit(desk);
        for (std::size_t i = 0; i < std::min(wanted, tasks.size()); ++i) {
            threads.emplace_back([&] { work(desk, tasks, box, options); });
        }
        collect(desk, progress, onResult);
    }
    std::vector<PhotoResult> results;
    results.reserve(tasks.size());
    for (auto& result : desk.results) results.push_back(std::move(*result));
    return results;
}

}  // namespace ringrule
