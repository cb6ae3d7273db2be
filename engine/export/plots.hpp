#pragma once

#include "engine/judging/figures.hpp"

#include <string>

namespace matula::exports {

// Pictures for a printed page: SVG in black, white and greys, every mark also told by its shape or by a
// number.

/// Text as it stands in HTML and SVG.
[[nodiscard]] std::string escaped(const std::string& text);

/// A test's table: rows what was shown, columns what was written; the darker, the larger a share of its row;
/// counts printed; readings on the grade framed.
[[nodiscard]] std::string confusion_plot(const judging::TestAgreement& test);
/// Where a class and its students draw each line of a group of tests: the class's as a filled mark with its
/// interval, each student's as a thin tick, the reference's as a dashed line.
[[nodiscard]] std::string lines_plot(const learner::GroupLines& of_class,
                                     const std::vector<judging::StudentView>& students);
/// Difficulty against discrimination, an item a mark; those to be looked at as crosses with their number.
[[nodiscard]] std::string items_plot(const judging::CaseView& view);
/// Share passed against the pass mark: as judged, and by the mean alone.
[[nodiscard]] std::string standard_plot(const judging::StandardView& view);
/// The dearest faults as bars.
[[nodiscard]] std::string faults_plot(const std::vector<records::FaultCount>& faults, std::size_t most);

} // namespace matula::exports
