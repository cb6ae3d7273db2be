#pragma once

#include <string>

namespace matula::window {

/// Loads the text font at `scale` (1 to 2) into ImGui and makes every distance of its style fit. The problem
/// in words, or empty.
[[nodiscard]] std::string set_text_scale(float scale);

/// Large letters for a title, until ImGui::PopFont().
void push_title_font();

} // namespace matula::window
