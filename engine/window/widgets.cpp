#include "engine/window/widgets.hpp"

#include <imgui.h>
#include <imgui_internal.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <fmt/format.h>

namespace matula::window {

void Widgets::begin_frame() {
  places_.clear();
  out_of_sight_.clear();
  facts_.clear();
  tell("frame", std::to_string(++frame_));
}

void Widgets::note(const char* name) {
  if (focus_next_) {
    focus_next_ = false;
    ImGui::SetFocusID(ImGui::GetItemID(), ImGui::GetCurrentWindow());
    ImGui::GetCurrentContext()->NavDisableHighlight = false;
    ImGui::SetScrollY(0); // It is the first control of its window.
  }
  if (ImGui::IsItemHovered()) {
    facts_["hovered"] = name;
  }
  if (ImGui::IsItemFocused()) {
    facts_["focus"] = name;
  }
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  const ImVec2 middle{(low.x + high.x) / 2, (low.y + high.y) / 2};
  ImRect shown = ImGui::GetCurrentWindow()->ClipRect;
  constexpr float edge = -3; // The pointer does not hover what lies on the very edge.
  shown.Expand(edge);
  std::string key = name;
  std::replace(key.begin(), key.end(), ' ', '_');
  (shown.Contains(middle) ? places_ : out_of_sight_)[key] = {middle.x, middle.y};
}

bool Widgets::button(const char* name, const std::string& label, bool enabled) {
  ImGui::PushID(name);
  ImGui::BeginDisabled(!enabled);
  const bool pressed = ImGui::Button(label.c_str());
  ImGui::EndDisabled();
  note(name);
  ImGui::PopID();
  return pressed;
}

bool Widgets::section(const char* name, const std::string& label) {
  ImGui::PushID(name);
  const bool open = ImGui::CollapsingHeader(label.c_str());
  note(name);
  ImGui::PopID();
  return open;
}

bool Widgets::choice(const char* name, const std::string& label, bool chosen) {
  ImGui::PushID(name);
  const bool pressed = ImGui::RadioButton(label.c_str(), chosen);
  note(name);
  ImGui::PopID();
  return pressed;
}

bool Widgets::tick(const char* name, const std::string& label, bool& value) {
  ImGui::PushID(name);
  const bool changed = ImGui::Checkbox(label.c_str(), &value);
  note(name);
  ImGui::PopID();
  return changed;
}

bool Widgets::line(const char* name, std::string& text, float width) {
  ImGui::PushID(name);
  ImGui::SetNextItemWidth(width);
  ImGui::InputText("##text", &text);
  note(name);
  if (ImGui::IsItemActive()) {
    tell("text", text);
  }
  const bool done = ImGui::IsItemDeactivatedAfterEdit();
  ImGui::PopID();
  return done;
}

bool Widgets::lines(const char* name, std::string& text, float height) {
  ImGui::PushID(name);
  ImGui::InputTextMultiline("##lines", &text, {-1, height});
  note(name);
  if (ImGui::IsItemActive()) {
    tell("text_length", std::to_string(text.size()));
  }
  const bool done = ImGui::IsItemDeactivatedAfterEdit();
  ImGui::PopID();
  return done;
}

bool Widgets::number(const char* name, double& value, double least, double most, float width,
                     const char* format) {
  ImGui::PushID(name);
  ImGui::SetNextItemWidth(width);
  ImGui::InputDouble("##number", &value, 0, 0, format);
  note(name);
  if (ImGui::IsItemActive()) {
    tell("text", fmt::format("{}", value));
  }
  const bool done = ImGui::IsItemDeactivatedAfterEdit();
  value = std::clamp(value, least, most);
  ImGui::PopID();
  return done;
}

bool Widgets::slider(const char* name, const std::string& label, float& value, float least, float most) {
  ImGui::PushID(name);
  // Beside the slider, for its grip would hide the number.
  const std::string words = fmt::format("{:.0f} mm {}###slider", static_cast<double>(value), label);
  ImGui::SliderFloat(words.c_str(), &value, least, most, "");
  note(name);
  const bool done = ImGui::IsItemDeactivatedAfterEdit();
  ImGui::PopID();
  return done;
}

bool Widgets::pick(const char* name, const std::string& label, const std::vector<std::string>& options,
                   int& chosen) {
  bool changed = false;
  ImGui::PushID(name);
  const bool known = chosen >= 0 && chosen < static_cast<int>(options.size());
  const bool open =
      ImGui::BeginCombo(label.c_str(), known ? options[static_cast<std::size_t>(chosen)].c_str() : "choose");
  if (!open) {
    note(name);
  } else {
    for (int i = 0; i < static_cast<int>(options.size()); ++i) {
      if (ImGui::Selectable(options[static_cast<std::size_t>(i)].c_str(), i == chosen)) {
        chosen = i;
        changed = true;
      }
      note(fmt::format("{}={}", name, options[static_cast<std::size_t>(i)]).c_str());
    }
    ImGui::EndCombo();
  }
  ImGui::PopID();
  return changed;
}

std::string Widgets::map() const {
  std::string text;
  for (const auto& [name, place] : places_) {
    text += fmt::format("{} {:.0f} {:.0f}\n", name, place.x, place.y);
  }
  for (const auto& [name, place] : out_of_sight_) {
    text += fmt::format("-{} {:.0f} {:.0f}\n", name, place.x, place.y);
  }
  for (const auto& [name, value] : facts_) {
    text += fmt::format("={} {}\n", name, value);
  }
  return text;
}

} // namespace matula::window
