#pragma once

#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <filesystem>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::guide {

/// What a field of a line of the log must hold for a step to count as done.
struct Wanted {
  std::string word; ///< This very word; "*": anything; "$name": the vessel that goes by that name from the
                    ///< first step that names it.
  double min = -std::numeric_limits<double>::infinity(); ///< For figures, where no word is given.
  double max = std::numeric_limits<double>::infinity();
};

/// One thing to do, and why.
struct Step {
  std::string say;
  std::string why;
  std::string show;                   ///< Tab the control is in: "do", "worksheet"...; may be empty.
  std::map<std::string, Wanted> done; ///< Fields of the log's line: "do", "vessel", "item"...
  double after_s = 0;                 ///< Not before so long after the step before it was done,
  std::string too_early;              ///< else this is said and the step stays.
};

/// How much of a part is said beforehand. Help fades from part to part.
enum class Help {
  EachStep, ///< Every step with its reason.
  Goal,     ///< What is to be reached; a step only when asked for.
  Name      ///< The name of the part alone; a step only when asked for.
};

/// A piece of work with a result of its own: a test, the calculation.
struct Part {
  std::string title;
  std::string goal;
  Help help = Help::EachStep;
  std::vector<Step> steps;
};

/// The way through one case for somebody who has never held a tube.
struct Guide {
  std::string welcome;
  std::string farewell;
  std::vector<Part> parts;
};

/// Where the guide of a scenario lies, if it has one: assets/guides, under the scenario's own name.
[[nodiscard]] std::filesystem::path guide_file(const std::filesystem::path& assets_folder,
                                               const std::filesystem::path& scenario_file);

/// Reads a guide; every problem is reported.
[[nodiscard]] tl::expected<Guide, scenario::Problems> load(const std::filesystem::path& file);

} // namespace matula::guide
