#pragma once

#include "engine/author/shelf.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/strict/edit.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::author {

/// One change to a case's text: the value at a path, as TOML writes it, or none to take it out.
struct Change {
  std::string path; ///< "specimen.ph", "specimen.leg[0].hours"
  std::optional<std::string> value;
};

/// The text with the changes made in place: remarks, order and ends of lines stay. Fails with a sentence for
/// a change that cannot be made; whether the case still reads well is for scenario::parse to say.
[[nodiscard]] strict::Edited save(const std::string& text, const std::vector<Change>& changes);

/// What must be changed in a case's text for its specimen's volume, temperature, pH, yellow, dissolved
/// substances, solids and cells to be these. A quantity keeps the unit its author wrote it in; what is the
/// same is left alone; what is gone is taken out.
[[nodiscard]] std::vector<Change> changes_for(const std::string& text, const specimen::Specimen& now,
                                              const specimen::Specimen& wanted, const Shelf& shelf);

/// A whole case as an author would write it by hand. For cases without a way to the bench and without a
/// delivery; throws std::invalid_argument for one with them. `remark` is put at its head, each line with its
/// #.
[[nodiscard]] std::string write_case(const scenario::Scenario& scenario, const std::string& remark,
                                     const Shelf& shelf);

} // namespace matula::author
