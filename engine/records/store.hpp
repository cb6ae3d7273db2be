#pragma once

#include "engine/records/rows.hpp"
#include "engine/records/trouble.hpp"

#include <array>
#include <functional>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace matula::records {

class Connection;

/// What became of a sitting that was to be stored.
struct Stored {
  enum class How {
    New,
    Known,   ///< The very log is stored already: nothing was changed.
    Earlier, ///< A longer log that begins with this one is stored already: nothing was changed.
    Goes_on, ///< It goes on where a stored one ended, and counts in its place; that one is kept.
  };
  How how = How::New;
  long long number = 0;    ///< Of the stored sitting.
  std::string same_log_as; ///< Pseudonym of another student who handed in the very same log; empty for none.
};

/// What was removed with a student, or at the end of the time sittings may be kept.
struct Removed {
  int students = 0;
  int names = 0;
  int sittings = 0;
  int scores = 0;
  int marks = 0;
  int readings = 0;
  int words = 0;
  int scenarios = 0;
};

/// What is asked about: everything, or one case, one label, one student.
struct Scope {
  std::string exercise;
  std::string label;
  std::string pseudonym;
};

/// A class's sittings and marks in a database of one file, or on a server for a department: an address that
/// begins with "postgresql://". Only whole sittings are ever stored, each in one transaction. Every function
/// throws Trouble, in words, and then has changed nothing. One thread at a time; other programs may read and
/// write the same store meanwhile.
class Store {
public:
  /// Opens a store, looks whether it is whole, brings it up to date, or makes a new one.
  explicit Store(const std::string& address);
  /// The same store through a way in of its own, for another thread to read beside this one.
  [[nodiscard]] Store beside() const;
  ~Store();
  Store(Store&&) noexcept;
  Store& operator=(Store&&) noexcept;

  /// Every stored log by pseudonym, case and content_name.
  [[nodiscard]] std::set<std::array<std::string, 3>> log_names();
  /// Stores a marked sitting. Its number tells its place; `now_s` is only what the clock said.
  Stored add(const Marked& marked, std::int64_t now_s);
  /// Stores many at once, all or none; for sittings made by the program itself.
  void add_all(const std::vector<Marked>& many, std::int64_t now_s);
  /// A stored log came again, and what was found as it was opened is to be reviewed: that is kept beside it
  /// from now on, unless the like is kept already. False when nothing was changed.
  bool keep_review(const std::string& pseudonym, const std::string& exercise, const std::string& log_name,
                   const std::string& checks);
  /// Keeps another score of a stored sitting beside those it has, and lets it count. False when that score is
  /// there already; then it counts again.
  bool add_score(long long number, const Marked& marked, std::int64_t now_s);
  /// The same on trial: `look` sees the store as it would be, then all is as it was.
  void try_score(long long number, const Marked& marked, std::int64_t now_s,
                 const std::function<void()>& look);

  /// Clock of the latest import, s; 0 for none.
  [[nodiscard]] std::int64_t latest_s();

  /// By number. With `all_scores` a row for every score of a sitting, oldest first; else the one that counts.
  [[nodiscard]] std::vector<SittingRow> sittings(const Scope& scope = {}, bool all_scores = false);
  [[nodiscard]] std::vector<MarkRow> marks(const SittingRow& score);
  [[nodiscard]] std::vector<ReadingRow> readings(const SittingRow& score);
  /// The sitting as it came in, to be replayed. Throws Trouble for a number nobody has.
  [[nodiscard]] Incoming original(long long number);
  /// The text of a scenario by its content_name.
  [[nodiscard]] std::string scenario_text(const std::string& name);

  /// Names by pseudonym; they stand in this store alone. An empty name takes one away.
  void set_names(const std::vector<std::pair<std::string, std::string>>& pseudonyms_and_names);
  [[nodiscard]] std::map<std::string, std::string> names();

  /// Removes a student with everything that came from them, also from the file's free space. Throws Trouble
  /// when there is none of this pseudonym.
  Removed forget(const std::string& pseudonym);
  /// Removes every sitting whose last day lies before `today` ("2027-09-30"), and students left with none.
  /// Writes the file anew in any case. Both throw Trouble, in other words, when they removed and could not do
  /// that.
  Removed forget_until(const std::string& today);
  /// What either would remove; nothing is changed.
  [[nodiscard]] Removed would_forget(const std::string& pseudonym);
  [[nodiscard]] Removed would_forget_until(const std::string& today);

  /// Writes a copy of the store into a new file, while others go on reading and writing. Not for a server's
  /// database, whose own tools do it.
  void back_up(const std::string& file);

  /// Looks through everything, where opening only looks whether the pages hang together: also whether every
  /// index tells what its table tells, every row's owner is there and every score has its marks. What is
  /// wrong, in words; nothing when all is well. Changes nothing. Of a server's database the rows alone.
  [[nodiscard]] std::vector<std::string> find_damage();

  /// For the views of this room.
  [[nodiscard]] Connection& connection() { return *connection_; }

private:
  Store(std::unique_ptr<Connection> connection, std::string codebook);

  std::unique_ptr<Connection> connection_;
  std::string codebook_;
};

} // namespace matula::records
