#pragma once

#include "engine/judging/figures.hpp"
#include "engine/records/store.hpp"

#include <string>

namespace matula::exports {

/// Who will read a file: students during an examination see what they wrote, and neither marks nor what was
/// right.
enum class For { Teacher, Student };

/// One row a sitting.
[[nodiscard]] std::string sittings_csv(const std::vector<records::SittingRow>& rows, For whom);
/// One row a mark.
[[nodiscard]] std::string marks_csv(records::Store& store, const std::vector<records::SittingRow>& rows,
                                    For whom);
/// One row an item of each case, with its difficulty and discrimination.
[[nodiscard]] std::string items_csv(const judging::ClassView& view);
/// One row a cell of each test's table of truth and reading.
[[nodiscard]] std::string confusion_csv(const judging::ClassView& view);

/// UTC, as RFC 3339 writes it: "2027-09-30T08:15:00Z".
[[nodiscard]] std::string moment_of(std::int64_t time_s);

} // namespace matula::exports
