#pragma once

#include "engine/author/shelf.hpp"
#include "engine/drafting/row.hpp"
#include "engine/strict/table.hpp"

namespace matula::drafting {

// Parts of the form that stand for whole sections of a case; each adds its groups to `form`. `root` is the
// case's text as read.

/// [collection] and its voids.
void add_counter(Form& form, const strict::Table& root, const std::string& text, const author::Shelf& shelf);

/// Ages of the bottles that are out, and of those that are written though they are not; [laboratory_rules].
void add_bottle_ages(Form& form, const strict::Table& root, const std::string& text,
                     const author::Shelf& shelf);
void add_rules(Form& form, const std::string& text, const author::Shelf& shelf);

/// [weights], [tolerances], [marking].
void add_marks(Form& form, const std::string& text, const author::Shelf& shelf);

} // namespace matula::drafting
