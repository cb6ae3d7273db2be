#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <limits>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace matula::reception {

/// What is done with a delivery. Note: nothing but a remark.
enum class Verdict { Note, Accept, Qualify, Refuse };

/// "note", "accept", "qualify", "refuse".
[[nodiscard]] std::string to_word(Verdict verdict);

/// A word that may stand on a form, a label or a container, and what a person calls it.
struct Word {
  std::string key;
  std::string label;
  double needs_ml = 0;              ///< Requests only: what the test takes of the specimen.
  std::vector<std::string> bottles; ///< Preservatives only: keys of the chemistry's bottles that are this.
};

/// Something a learner may find fault with.
struct Fault {
  std::string key;
  std::string label;
  std::string group; ///< "identity", "time", "container" or "day".
};

/// One fact of a delivery and what must hold of it.
struct Rule {
  std::string key;
  std::string fault; ///< Which fault it is; empty for a note.
  std::string fact;
  double min = -std::numeric_limits<double>::infinity();
  double max = std::numeric_limits<double>::infinity();
  std::vector<std::string> one_of;                      ///< Words that are right; empty when not limited.
  std::vector<std::string> none_of;                     ///< Words that are wrong.
  std::map<std::string, std::vector<std::string>> when; ///< Word facts that must be so for it to apply.
  std::vector<std::string> touches;                     ///< Requests it spoils; empty for all.
  Verdict verdict = Verdict::Note;
  Verdict partly = Verdict::Qualify; ///< When it spoils only some of what is asked.
  bool identity = false;             ///< Breaking it means that nobody knows whose specimen it is.
  std::string why;
  std::string source;
};

/// A line between bands of daily protein; some books draw it elsewhere.
struct Band {
  std::string key;
  std::string label;
  double up_to_g = std::numeric_limits<double>::infinity();
  double also_up_to_g = std::numeric_limits<double>::infinity(); ///< The same as up_to_g where books agree.
};

struct IndexRange {
  double low_mg_per_kg = 0;
  double high_mg_per_kg = 0;
};

/// Figures of the 24-hour exercise: assets/reception/day.toml.
struct DayRules {
  double volume_tolerance_ml = 10;
  double relative_tolerance = 0.02;
  double gram_tolerance = 0.01;
  double index_tolerance = 0.1;
  std::map<std::string, IndexRange> index; ///< By sex.
  std::vector<Band> bands;                 ///< From the least protein to the most; the last has no end.
  std::vector<std::string> proteins;       ///< Species that the laboratory's figure for protein counts.
  std::string creatinine;                  ///< The species of that name.
  double night_limit_mg_per_h = 0;         ///< Above it protein is lost in that half of the day.
};

/// Everything the counter goes by.
struct Book {
  std::map<std::string, std::vector<Word>> words; ///< "kind", "container", "preservative", "contamination",
                                                  ///< "request".
  std::vector<Fault> faults;
  std::vector<Rule> rules;
  std::map<std::string, int> marks; ///< Marks of each line.
  std::map<std::string, int>
      credit; ///< Per mille of a verdict that is not the right one: "qualify_for_refuse".
  DayRules day;

  [[nodiscard]] const Fault* find_fault(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> keys(const std::string& list) const;
  /// What a person calls `key`; the key itself when it is not in the list.
  [[nodiscard]] std::string label(const std::string& list, const std::string& key) const;
  /// The preservative that a bottle of the chemistry is on a label; "" for a bottle that is none.
  [[nodiscard]] std::string preservative_in(const std::string& bottle) const;
};

/// Reads assets/reception/rules.toml and day.toml under the assets folder; every problem is reported.
[[nodiscard]] tl::expected<Book, scenario::Problems> load_book(const std::filesystem::path& assets_folder);

/// The book of the assets folder, read once.
[[nodiscard]] const tl::expected<Book, scenario::Problems>& shipped_book();

} // namespace matula::reception
