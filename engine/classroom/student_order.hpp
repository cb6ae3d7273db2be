#pragma once

#include "engine/classroom/store_page.hpp"

#include <vector>

namespace matula::classroom {

/// What a list of students can be put in order by.
enum class StudentColumn { Name, Sittings, Passed, Mean, Exact, Missed, FalseAlarms, Stops };

/// Numbers of the students in the view, in that order: the smallest first, or the largest when `down`. Those
/// that are alike stand by pseudonym. `by_name`: by the name where the list has one.
[[nodiscard]] std::vector<std::size_t> students_in_order(const StorePage& page, StudentColumn column,
                                                         bool down, bool by_name);

} // namespace matula::classroom
