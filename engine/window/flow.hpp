#pragma once

#include <imgui.h>

namespace matula::window {

/// Width of a button, tick or the like with these words.
inline float width_of(const char* words) {
  const ImGuiStyle& style = ImGui::GetStyle();
  return ImGui::CalcTextSize(words).x + 2 * style.FramePadding.x;
}

/// Room left on the line after the control drawn last.
inline float room_after() {
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  return right - ImGui::GetItemRectMax().x - ImGui::GetStyle().ItemSpacing.x;
}

/// Goes on in the same line when `width` more fits there, else begins a new one.
inline void flow(float width) {
  if (width < room_after()) {
    ImGui::SameLine();
  }
}

} // namespace matula::window
