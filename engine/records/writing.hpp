#pragma once

#include "engine/records/connection.hpp"
#include "engine/records/rows.hpp"
#include "engine/records/store.hpp"

#include <map>

// Inside this room only.

namespace matula::records {

/// Puts sittings into the tables, within a transaction that the caller holds.
class Writer {
public:
  Writer(Connection& connection, const std::string& codebook)
      : connection_(connection), codebook_(codebook) {}

  Stored add(const Marked& marked, std::int64_t now_s);
  /// False when this score is there already. The score counts from now on.
  bool add_score(long long sitting, const Marked& marked, std::int64_t now_s);

private:
  /// The number of a row that is there once, added when it is not.
  long long once(const std::string& table, const std::string& column, const std::string& text);
  long long item(const std::string& name, const std::string& label);
  long long word(const std::string& text);
  long long scenario(const Marked& marked);
  long long rubric(const Rubric& rubric);
  void rows_of(long long score, long long student, const scoring::Report& report);
  long long earlier_part(long long student, long long exercise, const Marked& marked, Stored& stored);

  Connection& connection_;
  const std::string& codebook_;
  std::map<std::string, long long> known_; ///< Of this transaction: words may vanish after it.
};

/// Lets this score of the sitting count, and no other; none with 0.
void make_current(Connection& connection, long long sitting, long long score);

} // namespace matula::records
