// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFutureWatcher>
#include <QObject>
#include <atomic>
#include <functional>
#include <memory>
#include <utility>

#include "ringrule/workflow/measure_session.h"

namespace ringrule {

/// One piece of work at a time off the window's thread, with progress and stop. Work gets values and hands back a
/// value; what it throws comes back as `failed`. Lives on the window's thread.
class JobRunner : public QObject {
    Q_OBJECT

public:
    explicit JobRunner(QObject* parent = nullptr);
    /// Stops the work and waits for it.
    ~JobRunner() override;

    [[nodiscard]] bool running() const { return running_; }
    [[nodiscard]] QString title() const { return title_; }

    /// Runs `work` and then, on the window's thread, `done` with its result. Precondition: not `running()`.
    template <class Result>
    void start(const QString& title, std::function<Result(const Progress&)> work, std::function<void(Result)> done) {
        launch(title, [work = std::move(work), done = std::move(done)](const Progress& progress) -> Delivery {
            auto result = std::make_shared<Result>(work(progress));
            return [result, done] { done(std::move(*result)); };
        });
    }

    /// Asks the work to stop; it says so itself by `failed(…, true)`.
    void stop() { stop_ = true; }

signals:
    void started(const QString& title);
    void progressed(double fraction, const QString& stage);
    /// After `done` has run, or after `failed`.
    void finished();
    void failed(const QString& sentence, bool stopped);

private:
    using Delivery = std::function<void()>;
    struct Ending {
        Delivery deliver;
        QString failure;
        bool stopped = false;
    };

    void launch(const QString& title, std::function<Delivery(const Progress&)> work);
    void finish();

    QFutureWatcher<Ending> watcher_;
    QString title_;
    std::atomic<bool> stop_{false};
    bool running_ = false;
};

}  // namespace ringrule
