// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/job_runner.h"

#include <QSignalSpy>
#include <QThread>
#include <catch2/catch.hpp>
#include <stdexcept>

#include "ringrule/error.h"

using namespace ringrule;

namespace {

constexpr int kPatienceMs = 10000;

/// Work that only a stop ends; it says how often it looked.
int untilStopped(const Progress& progress) {
    for (int step = 0;; ++step) {
        if (!progress(0.5, "waiting")) throw Error(ErrorKind::Stopped, "stopped");
        QThread::msleep(1);
    }
}

}  // namespace

TEST_CASE("a job runs off the window's thread and hands its value back on it") {
    JobRunner runner;
    QSignalSpy finished(&runner, &JobRunner::finished);
    QThread* worked = nullptr;
    QThread* delivered = nullptr;
    int value = 0;
    runner.start<int>(
        "adding",
        [&worked](const Progress& progress) {
            worked = QThread::currentThread();
            progress(0.5, "half");
            return 42;
        },
        [&](int result) {
            value = result;
            delivered = QThread::currentThread();
        });
    CHECK(runner.running());
    REQUIRE(finished.wait(kPatienceMs));
    CHECK(value == 42);
    CHECK(delivered == QThread::currentThread());
    CHECK(worked != delivered);
    CHECK_FALSE(runner.running());
}

TEST_CASE("a running job stops, and its result is not delivered") {
    JobRunner runner;
    QSignalSpy failed(&runner, &JobRunner::failed);
    bool delivered = false;
    runner.start<int>("waiting", untilStopped, [&](int) { delivered = true; });
    runner.stop();
    REQUIRE(failed.wait(kPatienceMs));
    CHECK(failed.front().at(1).toBool());
    CHECK_FALSE(delivered);
    CHECK_FALSE(runner.running());
    // It can be used again.
    QSignalSpy finished(&runner, &JobRunner::finished);
    runner.start<int>(
        "again", [](const Progress&) { return 1; }, [&](int) { delivered = true; });
    REQUIRE(finished.wait(kPatienceMs));
    CHECK(delivered);
}

TEST_CASE("what a job throws becomes a sentence") {
    JobRunner runner;
    QSignalSpy failed(&runner, &JobRunner::failed);
    SECTION("the world's failures") {
        runner.start<int>(
            "failing", [](const Progress&) -> int { throw Error(ErrorKind::BadPhoto, "is no photo", "a.jpg"); },
            [](int) {});
        REQUIRE(failed.wait(kPatienceMs));
        CHECK(failed.front().at(0).toString() == "a.jpg: is no photo");
        CHECK_FALSE(failed.front().at(1).toBool());
    }
    SECTION("and any other") {
        runner.start<int>(
            "failing", [](const Progress&) -> int { throw std::runtime_error("out of order"); }, [](int) {});
        REQUIRE(failed.wait(kPatienceMs));
        CHECK(failed.front().at(0).toString() == "out of order");
    }
}

TEST_CASE("a runner that goes away stops its job first") {
    std::atomic<bool> ended{false};
    {
        JobRunner runner;
        runner.start<int>(
            "waiting",
            [&ended](const Progress& progress) {
                try {
                    return untilStopped(progress);
                } catch (...) {
                    ended = true;
                    throw;
                }
            },
            [](int) {});
    }
    CHECK(ended);
}
