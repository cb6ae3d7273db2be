#pragma once

#include "engine/render/rect.hpp"

#include <imgui.h>

namespace matula::window {

/// A fixed part of the window: an ImGui window without bars that fills `area`.
class Pane {
public:
  Pane(const char* name, const render::Rect& area, ImGuiWindowFlags more = 0) {
    ImGui::SetNextWindowPos({area.x, area.y});
    ImGui::SetNextWindowSize({area.w, area.h});
    ImGui::Begin(name, nullptr,
                 ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                     ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoBringToFrontOnFocus | more);
  }
  ~Pane() { ImGui::End(); }
  Pane(const Pane&) = delete;
  Pane& operator=(const Pane&) = delete;
};

} // namespace matula::window
