#pragma once

#include "engine/procedure/recipe.hpp"
#include "engine/procedure/rule.hpp"
#include "engine/scenario/problem.hpp"
#include "sim/reading/grade.hpp"
#include "sim/reading/scale.hpp"

#include <tl/expected.hpp>

#include <array>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::strict {
class Table;
}

namespace matula::procedure {

/// What comes out of a test: a word for what a tube or paper shows, or the figure an instrument shows.
enum class Result { Word, Number };

/// As many words as a result can have: the fields of a reference card.
inline constexpr std::size_t most_words = 12;

/// A figure read off an instrument.
struct NumberResult {
  std::string instrument; ///< As the bench names it: "refractometer".
  std::string unit;       ///< "" for a bare number.
  std::string example;    ///< "1.018"
  double division = 0;    ///< Of the scale: a reader may round to it.
  double full = 0;        ///< Full marks within,
  double none = 1;        ///< no marks from.
};

/// A span of concentrations, g/dL.
struct GramsSpan {
  double low = 0;
  double high = 0;
};

/// A curve of standards: every tube is read on the instrument, and the specimen's figure is read off it.
struct Curve {
  std::vector<std::string> standards; ///< Bottles, weakest first,
  std::vector<double> values;         ///< and what they hold, in the unit of the result.
  std::string blank;                  ///< Bottle that takes the reagent's place in the specimen's blank.
  double wavelength_nm = 620;
  double read_within = 0.02; ///< How finely a drawn curve is read, as a share of the highest standard.
};

/// One test of the trade: what it is called, how it is done by the book, how its result is read, which words
/// the result has, and what is asked of the work. Each is one file in assets/procedures.
struct Procedure {
  std::string key;     ///< "heat"
  std::string label;   ///< In a sentence: "heat and acetic acid test".
  std::string title;   ///< On the worksheet: "Heat and acetic acid".
  std::string request; ///< On the request form: "Protein by heat and acetic acid".
  int order = 0;       ///< Place on worksheet and marks, rising.
  Result result = Result::Word;
  NumberResult number;            ///< Only for figures.
  std::optional<Curve> curve;     ///< Only for figures read off a curve.
  reading::Scale scale;           ///< Only for words.
  std::vector<std::string> words; ///< Of the grades, lowest first: two to most_words.
  std::vector<std::string>
      needs; ///< For each, a bottle that begins so must be out when the test is asked for.
  std::vector<std::string> reagents; ///< Whatever tube holds one of these was made for this test,
  std::vector<double> strengths;     ///< each counted by its strength relative to the recipe's,
  std::vector<std::string> with;     ///< if it also holds each of these,
  std::vector<std::string> without;  ///< and none of these.
  int under_reading_percent = 100;
  std::size_t reportable = 2; ///< First grade a doctor must hear of, as an index into words.
  int share = 20;             ///< Of the procedure's marks.
  std::string stands_for;     ///< "protein", "sugar" or "": what a specific gravity is corrected with it for,
  std::array<GramsSpan, reading::grade_count> grade_g_per_dl{}; ///< and what each grade stands for.
  Recipe recipe;
  std::vector<Rule> rules;
  std::string source;

  /// The item of the worksheet: "heat.grade", "refractometer.value".
  [[nodiscard]] std::string item() const { return key + (result == Result::Word ? ".grade" : ".value"); }
  [[nodiscard]] std::string word(reading::Grade grade) const;
  /// The grade a word stands for; nothing for any other word.
  [[nodiscard]] std::optional<reading::Grade> grade(std::string_view word) const;
};

/// Looks at a rule where it was read and complains to its table.
using CheckRule = std::function<void(const strict::Table&, const Rule&)>;

/// Reads one rule; a safety rule has marks and no part.
[[nodiscard]] Rule read_rule(const strict::Table& table, const std::vector<std::string>& parts,
                             const CheckRule& check);

/// Every file of the folder, in the order the worksheet shows them; all problems are reported.
[[nodiscard]] tl::expected<std::vector<Procedure>, scenario::Problems>
load(const std::filesystem::path& procedures_folder, const CheckRule& check);

/// Those of the assets folder, read once.
[[nodiscard]] const tl::expected<std::vector<Procedure>, scenario::Problems>& shipped();

/// The same as a plain list, empty when they cannot be read.
[[nodiscard]] const std::vector<Procedure>& shipped_list();

/// The shipped one with this key; null when there is none.
[[nodiscard]] const Procedure* find_shipped(std::string_view key);

} // namespace matula::procedure
