#pragma once

#include "engine/records/store.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace matula::records {

/// One way in which the sittings of a case were marked: by which rules, in which world, with which program,
/// and under which text of the case. All of them are kept; one of each sitting counts.
struct Version {
  std::string exercise;
  Rubric rubric;
  std::string scenario_name; ///< Of another text of the case; empty for the one each sitting was done at.
  std::int64_t scored_s = 0; ///< When the first of these was marked.
  int sittings = 0;          ///< Marked so,
  int counting = 0;          ///< of which these count now,
  int passed = 0;            ///< and these pass under it.
};

/// Every version there is within the scope, by case, oldest first. Sittings that go on in another are left
/// out.
[[nodiscard]] std::vector<Version> versions_of(Store& store, const Scope& scope = {});

/// Lets this version count for every sitting within the scope that was marked so; the others are kept.
/// Returns how many sittings were counted otherwise before. Throws Trouble.
int let_count(Store& store, const Scope& scope, const Version& version);

} // namespace matula::records
