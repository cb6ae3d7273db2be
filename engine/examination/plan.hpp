#pragma once

#include "engine/examination/contents.hpp"

#include <filesystem>

namespace matula::matter {
struct Catalogue;
}

namespace matula::examination {

/// Where a case of an examination comes from.
struct PlannedCase {
  enum class From {
    Scenario, ///< One file: everybody has the same specimen, each with a float and tubes of its own seed.
    Pattern,  ///< A patient drawn for every learner.
    Forms     ///< A folder with a file PSEUDONYM.toml for every learner, or PSEUDONYM/`unknown`.toml.
  };
  From from = From::Scenario;
  std::string what;    ///< File, key of a pattern or file of one, folder; as written.
  std::string unknown; ///< Of forms that hold several for each learner: "unknown-2"; empty for one.
};

/// An examination as its file describes it.
struct Plan {
  std::string title;
  std::uint32_t minutes = 60;
  std::string delete_after;     ///< "2027-07-31"
  std::filesystem::path folder; ///< Of the file; what it names is looked for there.
  std::vector<PlannedCase> cases;
};

[[nodiscard]] seal::Maybe<Plan> read_plan(const std::filesystem::path& file);

/// A learner's seed for one case: a keyed hash (BLAKE2b) of pseudonym and label under the pack's secret, from
/// 1 to 2147483647.
[[nodiscard]] std::uint64_t seed_for(const seal::Hash& secret, const std::string& pseudonym,
                                     const std::string& label);

/// What each learner gets, whole scenarios; labels are "unknown-1" and so on. The same plan and secret give
/// the same. Every scenario is read and checked.
[[nodiscard]] seal::Maybe<std::vector<StudentCases>>
draw(const Plan& plan, const std::vector<std::string>& pseudonyms, const seal::Hash& secret,
     const std::filesystem::path& assets, const matter::Catalogue& catalogue);

/// The same with bench halves only; each is read as a bench would read it.
[[nodiscard]] seal::Maybe<std::vector<StudentCases>> bench_halves(const std::vector<StudentCases>& whole,
                                                                  const matter::Catalogue& catalogue);

} // namespace matula::examination
