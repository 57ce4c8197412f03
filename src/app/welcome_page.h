// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <memory>

namespace Ui {
class WelcomePage;
}

namespace ringrule {

/// What a keeper sees before a collection is open: what to do first.
class WelcomePage : public QWidget {
    Q_OBJECT

public:
    explicit WelcomePage(QWidget* parent = nullptr);
    ~WelcomePage() override;

    void showRecent(const QStringList& folders);

signals:
    void openWanted();
    void createWanted();
    void demoWanted();
    void folderWanted(const QString& folder);
    void cautionsWanted();

private:
    std::unique_ptr<Ui::WelcomePage> ui_;
};

}  // namespace ringrule
