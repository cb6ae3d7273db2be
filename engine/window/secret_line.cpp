#include "engine/window/secret_line.hpp"

#include <imgui.h>
#include <imgui_internal.h>

#include <algorithm>
#include <cstring>

namespace matula::window {

namespace {

/// What ImGui keeps of the text typed last, in its buffers and for undoing.
void wipe_typed() {
  auto& state = ImGui::GetCurrentContext()->InputTextState;
  std::fill(state.TextW.begin(), state.TextW.end(), ImWchar{0});
  std::fill(state.TextA.begin(), state.TextA.end(), '\0');
  std::fill(state.InitialTextA.begin(), state.InitialTextA.end(), '\0');
  auto& undo = state.Stb.undostate;
  std::fill(std::begin(undo.undo_char), std::end(undo.undo_char), ImWchar{0});
}

} // namespace

bool secret_line(Widgets& widgets, const char* name, seal::Secret& words, float width) {
  char* const text = reinterpret_cast<char*>(words.data());
  ImGui::PushID(name);
  ImGui::SetNextItemWidth(width);
  ImGui::InputText("##secret", text, words.size(),
                   ImGuiInputTextFlags_Password | ImGuiInputTextFlags_NoUndoRedo);
  widgets.note(name);
  if (ImGui::IsItemActive()) {
    widgets.tell("text_length", std::to_string(std::strlen(text)));
  }
  if (ImGui::IsItemDeactivated()) {
    wipe_typed();
  }
  ImGui::PopID();
  return text[0] != '\0';
}

} // namespace matula::window
