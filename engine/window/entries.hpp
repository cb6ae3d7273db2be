#pragma once

#include "engine/window/app.hpp"

#include <string>
#include <utility>
#include <vector>

namespace matula::window {

/// Whether the case at hand is an examination, where the words of the grade tables are not at hand.
[[nodiscard]] bool is_examination(const App& app);

/// What stands on the worksheet for an item; empty when nothing.
[[nodiscard]] std::string written(const App& app, const std::string& item);

/// Answers of which one is written down, in a row that breaks where it must: key and wording. `line` goes
/// before the wording where it is told what was written.
void draw_answers(App& app, const std::string& item,
                  const std::vector<std::pair<std::string, std::string>>& answers,
                  const std::string& line = "");

/// A field for a number with its words behind it; what is no number is refused, `example` shows one.
void draw_number_line(App& app, const std::string& item, const std::string& words,
                      const std::string& example = "1.5");

} // namespace matula::window
