#include "engine/records/connection.hpp"

#include <soci/sqlite3/soci-sqlite3.h>

#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <map>
#include <mutex>

namespace soci {
extern "C" {
backend_factory const* factory_postgresql(); // Its header wants the server's own headers.
}
} // namespace soci

namespace matula::records {

namespace fs = std::filesystem;

namespace {

constexpr int wait_ms = 5000; // For another writer.
/// Marks a file as one of ours ("Matu"), so that no other program's database is taken for a class.
constexpr long long our_mark = 0x4d617475;

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

/// A file that is there must look like a database before anything opens it for writing.
void look_at(const std::string& file) {
  std::error_code ignored;
  if (!fs::exists(file, ignored) || fs::file_size(file, ignored) == 0) {
    return;
  }
  constexpr std::string_view head("SQLite format 3\0", 16);
  std::string start(head.size(), '\0');
  std::ifstream in(file, std::ios::binary);
  in.read(start.data(), static_cast<std::streamsize>(start.size()));
  if (!in) {
    throw Trouble(file + " cannot be read, or is too short for a class store. It was left as it is.");
  }
  if (start != head) {
    throw Trouble(file + " is no class store: it does not begin like one. It was left as it is.");
  }
}

/// Looks at a file and notes that this process has it open, until what is returned goes. While it has, the
/// file is not looked at again: on POSIX systems closing it, however it was opened, drops every lock the
/// process holds on it, and another program would then take the store for abandoned and remove its journal
/// (SQLite, "How To Corrupt An SQLite Database File", 2.2).
std::shared_ptr<const void> hold(const std::string& file) {
  static std::mutex guard;
  static std::map<std::string, int> open;
  std::error_code unknown;
  const fs::path known = fs::weakly_canonical(file, unknown);
  const std::string name = unknown ? file : known.string();
  const std::lock_guard<std::mutex> lock(guard);
  if (open.count(name) == 0) {
    look_at(file);
  }
  ++open[name];
  return {nullptr, [name](const void* /*nothing*/) {
            const std::lock_guard<std::mutex> last(guard);
            if (--open[name] == 0) {
              open.erase(name);
            }
          }};
}

void look_through(Connection& connection) {
  const std::string wrong = connection.text("PRAGMA quick_check(1)");
  if (wrong != "ok") {
    throw Trouble(fmt::format("{} is damaged ({}). It was left as it is; go on from the last backup.",
                              connection.address(), wrong));
  }
}

void set_up_file(Connection& connection, Connection::Opening opening) {
  connection.run(fmt::format("PRAGMA busy_timeout = {}", wait_ms));
  const auto mark = connection.number("PRAGMA application_id");
  const bool empty = connection.number("SELECT count(*) FROM sqlite_master") == 0;
  if (!empty && mark != our_mark) {
    throw Trouble(connection.address() +
                  " is another program's database, not a class store. It was left as it is.");
  }
  if (opening == Connection::Opening::Looked_through) {
    look_through(connection);
  }
  connection.run("PRAGMA foreign_keys = ON");
  connection.run("PRAGMA secure_delete = ON");
  connection.run("PRAGMA synchronous = FULL");
  connection.run("PRAGMA cache_size = -65536");
  if (empty) {
    connection.run(fmt::format("PRAGMA application_id = {}", our_mark));
  }
  if (connection.text("PRAGMA journal_mode") != "wal") {
    connection.run("PRAGMA journal_mode = WAL");
  }
}

std::string file_words(const std::string& file, int code, const std::string& said) {
  constexpr int primary = 0xff; // The rest of the number tells details.
  switch (code & primary) {
  case SQLITE_BUSY:
  case SQLITE_LOCKED:
    return file + " is in use by another program, which has not let go of it for 5 seconds. Nothing was "
                  "changed; try again when that program has finished.";
  case SQLITE_FULL:
    return "The disk is full: " + file +
           " could not be written. What was already stored is kept; make room and do the same again.";
  case SQLITE_READONLY:
    return file + " may not be written by you, or its folder may not. Nothing was changed.";
  case SQLITE_CANTOPEN:
    return file + " cannot be opened or made: look whether its folder is there and may be written.";
  case SQLITE_CORRUPT:
  case SQLITE_NOTADB:
    return file + " is damaged (" + said + "). It was left as it is; go on from the last backup.";
  case SQLITE_IOERR:
    return "The disk refused while " + file +
           " was read or written (full, a limit on file sizes, or faulty). What was already stored is kept.";
  default:
    return file + ": " + said;
  }
}

} // namespace

std::string in_words(const std::string& address, const soci::soci_error& error) {
  const auto* of_file = dynamic_cast<const soci::sqlite3_soci_error*>(&error);
  if (of_file != nullptr) {
    return file_words(address, of_file->result(), error.get_error_message());
  }
  return "The database server at " + address.substr(0, address.find('?')) +
         " answered: " + error.get_error_message();
}

Connection::Connection(const std::string& address, Opening opening)
    : address_(address), on_server_(address.rfind("postgresql://", 0) == 0) {
  in_plain_words(address_, [&] {
    if (on_server_) {
      sql_.open(*soci::factory_postgresql(), address_);
      run("SET client_min_messages = warning");
      run(fmt::format("SET lock_timeout = {}", wait_ms));
      return;
    }
    if (address_.empty() || address_.find_first_of("\"\\") != std::string::npos) {
      throw Trouble("\"" + address_ + "\" is no name for a file; leave out quotation marks.");
    }
    held_ = hold(address_);
    sql_.open(*soci::factory_sqlite3(), "db=\"" + address_ + '"');
    set_up_file(*this, opening);
  });
}

void Connection::run(std::string statement) {
  replace_all(statement, "{ID}",
              on_server_ ? "BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY" : "INTEGER PRIMARY KEY");
  replace_all(statement, "{BYTES}", on_server_ ? "BYTEA" : "BLOB");
  replace_all(statement, "{ROWS}", on_server_ ? "" : "WITHOUT ROWID");
  sql_ << statement;
}

Cell Connection::number(const std::string& query) {
  long long value = 0;
  soci::indicator there = soci::i_null;
  sql_ << query, soci::into(value, there);
  return sql_.got_data() && there == soci::i_ok ? Cell(value) : std::nullopt;
}

std::string Connection::text(const std::string& query) {
  std::string value;
  soci::indicator there = soci::i_null;
  sql_ << query, soci::into(value, there);
  return sql_.got_data() && there == soci::i_ok ? value : "";
}

void Connection::insert(const std::string& into, const std::vector<std::vector<Cell>>& rows) {
  constexpr std::size_t at_once = 400;
  for (std::size_t from = 0; from < rows.size(); from += at_once) {
    std::string statement = "INSERT INTO " + into + " VALUES ";
    for (std::size_t i = from; i < rows.size() && i < from + at_once; ++i) {
      statement += i == from ? "(" : ",(";
      for (std::size_t c = 0; c < rows[i].size(); ++c) {
        statement += (c == 0 ? "" : ",") + (rows[i][c] ? std::to_string(*rows[i][c]) : std::string("NULL"));
      }
      statement += ")";
    }
    sql_ << statement;
  }
}

std::string Connection::bytes(std::string_view raw) const {
  constexpr const char* digits = "0123456789abcdef";
  std::string text = on_server_ ? "decode('" : "X'";
  for (const char letter : raw) {
    const auto byte = static_cast<unsigned char>(letter);
    text += digits[byte >> 4U];
    text += digits[byte & 15U];
  }
  return text + (on_server_ ? "', 'hex')" : "'");
}

std::string Connection::hex_of(const std::string& column) const {
  return on_server_ ? "encode(" + column + ", 'hex')" : "hex(" + column + ")";
}

std::string from_hex(std::string_view digits) {
  const auto value = [](char c) { return c <= '9' ? c - '0' : (c | 0x20) - 'a' + 10; };
  std::string raw;
  for (std::size_t i = 0; i + 1 < digits.size(); i += 2) {
    raw += static_cast<char>(value(digits[i]) * 16 + value(digits[i + 1]));
  }
  return raw;
}

Transaction::Transaction(Connection& connection) : connection_(connection) {
  connection_.sql() << (connection_.on_server() ? "BEGIN" : "BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
  if (open_) {
    try {
      connection_.sql() << "ROLLBACK";
    } catch (
        const soci::soci_error&) { // NOLINT(bugprone-empty-catch): the database has taken it back itself.
    }
  }
}

void Transaction::commit() {
  connection_.sql() << "COMMIT";
  open_ = false;
}

} // namespace matula::records
