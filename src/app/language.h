// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

namespace ringrule {

/// Languages that the program ships, as ISO 639 codes.
[[nodiscard]] QStringList shippedLanguages();
/// A language by its own name, e.g. "Deutsch".
[[nodiscard]] QString languageName(const QString& code);

/// Speaks this language from now on, English where it has no words; an empty code is the system's language. Returns the
/// language that was found. Precondition: a running application, no window yet.
QString speakLanguage(const QString& code);

}  // namespace ringrule
