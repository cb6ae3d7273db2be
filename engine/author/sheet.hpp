#pragma once

#include "engine/author/forms.hpp"

#include <string>

namespace matula::author {

/// Request forms and labels of a class, to be printed on A4: for each student a page or more with the request
/// forms of the unknowns and room for the results, then a sheet of labels to be cut out and stuck on the
/// cups. No result stands on it. HTML with its style inside; readable in grey.
[[nodiscard]] std::string printable_sheet(const Plan& plan, const std::vector<Form>& forms,
                                          const Shelf& shelf);

/// The teacher's key to them on paper: for each unknown what its tests show by the book, how near to another
/// word, its specific gravity and how hard it is (logits).
[[nodiscard]] std::string printable_key(const Plan& plan, const std::vector<Form>& forms);

} // namespace matula::author
