#pragma once

#include <imgui.h>

#include <string>

namespace matula::window {

/// A heading with a line above it, for a group of controls.
inline void heading(const char* words) {
  ImGui::Spacing();
  ImGui::Separator();
  ImGui::TextColored({0.60F, 0.84F, 0.81F, 1.0F}, "%s", words);
}

/// A point of a list, broken into lines where it must.
inline void point(const std::string& words) {
  ImGui::Bullet();
  ImGui::TextWrapped("%s", words.c_str());
}

/// Width for a short number.
inline float number_width() {
  return ImGui::GetFontSize() * 4.5F;
}

} // namespace matula::window
