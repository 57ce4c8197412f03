// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/server_address.h"

#include <QUrl>
#include <QUrlQuery>

#include "ringrule/error.h"

namespace ringrule {
namespace {

[[noreturn]] void refuse(const std::string& text, const std::string& why) {
    throw Error(ErrorKind::BadUse, why + "; an address is postgresql://USER@HOST/DATABASE", text);
}

/// A parameter as libpq's connection strings quote it.
QString parameter(const QString& name, QString value) {
    value.replace('\\', "\\\\").replace('\'', "\\'");
    return name + "='" + value + "';";
}

}  // namespace

bool isServerAddress(const std::string& text) {
    return text.starts_with("postgresql:") || text.starts_with("postgres:");
}

ServerAddress readServerAddress(const std::string& text) {
    const QUrl url(QString::fromStdString(text), QUrl::StrictMode);
    if (!isServerAddress(text) || !url.isValid()) refuse(text, "this is no address of a database");
    ServerAddress address;
    if (!url.password().isEmpty()) {
        throw Error(ErrorKind::BadUse,
                    "leave the password out of the address: everybody could read it; put it into the password file "
                    "(~/.pgpass, a line HOST:PORT:DATABASE:USER:PASSWORD)");
    }
    address.text = text;
    address.host = url.host(QUrl::FullyDecoded).toStdString();
    address.port = url.port();
    address.user = url.userName(QUrl::FullyDecoded).toStdString();
    address.database = url.path(QUrl::FullyDecoded).mid(1).toStdString();
    if (address.database.empty() || address.database.find('/') != std::string::npos)
        refuse(text, "this address names no database");
    QString options = "application_name='ringrule';keepalives_idle='30';keepalives_interval='10';keepalives_count='3';";
    bool waits = false;
    for (const auto& [name, value] : QUrlQuery(url).queryItems(QUrl::FullyDecoded)) {
        if (value.contains(';')) refuse(text, "\"" + name.toStdString() + "\" of this address holds a semicolon");
        if (name == "host")
            address.host = value.toStdString();
        else if (name == "port")
            address.port = value.toInt();
        else if (name == "user")
            address.user = value.toStdString();
        else if (name == "sslmode" || name == "sslrootcert" || name == "passfile" || name == "connect_timeout")
            options += parameter(name, value);
        else
            refuse(text, "\"" + name.toStdString() + "\" is not a part of an address that is known here");
        waits = waits || name == "connect_timeout";
    }
    if (!waits) options += "connect_timeout='10';";
    options.chop(1);
    address.options = options.toStdString();
    return address;
}

}  // namespace ringrule
