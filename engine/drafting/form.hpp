#pragma once

#include "engine/author/shelf.hpp"
#include "engine/drafting/row.hpp"
#include "engine/scenario/problem.hpp"

namespace matula::drafting {

/// The form of a case's text as it stands: every value there is a row for, what may be ticked and added, and
/// what is wrong, each at its row. Text that is no TOML gives a form without rows.
[[nodiscard]] Form form_of(const std::string& text, const scenario::Problems& problems,
                           const author::Shelf& shelf);

/// The row of a path; null when the form has none.
[[nodiscard]] const Row* find_row(const Form& form, const std::string& path);

/// So much of a substance as is added at first, in words: "100 mg/dL". A twentieth of the most a case may
/// hold, which mostly shows and never overwhelms: a proposal of this program.
[[nodiscard]] std::string first_amount(const std::string& path, const author::Shelf& shelf);

} // namespace matula::drafting
