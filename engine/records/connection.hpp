#pragma once

#include "engine/records/trouble.hpp"

#include <soci/soci.h>

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// Inside this room only: the two databases behind one way of speaking to them.

namespace matula::records {

/// A number in a row, or nothing.
using Cell = std::optional<long long>;

/// One open database. An address that begins with "postgresql://" is a server's, any other a file's.
class Connection {
public:
  /// Whether a file's pages are looked through, or were a moment ago by another connection.
  enum class Opening { Looked_through, Beside };
  /// Opens the file (making it when there is none) or the server's database. Throws Trouble.
  explicit Connection(const std::string& address, Opening opening = Opening::Looked_through);

  [[nodiscard]] bool on_server() const { return on_server_; }
  [[nodiscard]] const std::string& address() const { return address_; }
  [[nodiscard]] soci::session& sql() { return sql_; }

  /// Runs statements without parameters or results. {ID}, {BYTES} and {ROWS} stand for what the two databases
  /// say differently: a number given by the database, raw bytes, and a table kept in the order of its key.
  void run(std::string statement);
  /// The first column of the first row; nothing without a row, or when it is NULL.
  [[nodiscard]] Cell number(const std::string& query);
  [[nodiscard]] std::string text(const std::string& query); ///< "" without a row.
  /// Adds rows of numbers in few statements.
  void insert(const std::string& into, const std::vector<std::vector<Cell>>& rows);

  /// Raw bytes as they stand in a statement, and a column of bytes as hexadecimal digits.
  [[nodiscard]] std::string bytes(std::string_view raw) const;
  [[nodiscard]] std::string hex_of(const std::string& column) const;

private:
  std::string address_;
  bool on_server_ = false;
  std::shared_ptr<const void> held_; ///< Before the session: let go of after it is closed.
  soci::session sql_;
};

/// All or nothing: what was written is taken back unless `commit` was called. Waits for other writers, up to
/// the time the connection was opened with.
class Transaction {
public:
  explicit Transaction(Connection& connection);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

private:
  Connection& connection_;
  bool open_ = true;
};

/// The raw bytes of hexadecimal digits.
[[nodiscard]] std::string from_hex(std::string_view digits);

/// What the database answered, in words for the instructor.
[[nodiscard]] std::string in_words(const std::string& address, const soci::soci_error& error);

/// Does `work`, and turns the database's complaint into Trouble.
template <class Work> auto in_plain_words(const std::string& address, Work work) -> decltype(work()) {
  try {
    return work();
  } catch (const soci::soci_error& error) {
    throw Trouble(in_words(address, error));
  }
}

} // namespace matula::records
