// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/job_runner.h"

#include <QtConcurrent>

#include "ringrule/error.h"

namespace ringrule {

JobRunner::JobRunner(QObject* parent) : QObject(parent) {
    connect(&watcher_, &QFutureWatcher<Ending>::finished, this, &JobRunner::finish);
}

JobRunner::~JobRunner() {
    stop_ = true;
    watcher_.disconnect(this);
    if (running_) watcher_.waitForFinished();
}

void JobRunner::launch(const QString& title, std::function<Delivery(const Progress&)> work) {
    Q_ASSERT(!running_);
    stop_ = false;
    running_ = true;
    title_ = title;
    emit started(title);
    // An exception of ours that left a Qt Concurrent worker would lose its type: it is caught here and handed over as a
    // value.
    watcher_.setFuture(QtConcurrent::run([this, work = std::move(work)]() -> Ending {
        const Progress progress = [this](double fraction, std::string_view stage) {
            emit progressed(fraction, QString::fromUtf8(stage.data(), static_cast<qsizetype>(stage.size())));
            return !stop_;
        };
        try {
            return {work(progress), {}, false};
        } catch (const Error& error) {
            return {{}, QString::fromStdString(error.what()), error.kind() == ErrorKind::Stopped};
        } catch (const std::exception& error) {
            return {{}, QString::fromStdString(error.what()), false};
        }
    }));
}

void JobRunner::finish() {
    const Ending ending = watcher_.result();
    running_ = false;
    if (ending.deliver)
        ending.deliver();
    else
        emit failed(ending.failure, ending.stopped);
    emit finished();
}

}  // namespace ringrule
