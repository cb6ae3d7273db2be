#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/paper.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace matula::window {

namespace {

constexpr ImU32 glass = IM_COL32(214, 224, 224, 255);
constexpr ImU32 lid = IM_COL32(226, 164, 72, 255);
constexpr ImU32 sticker = IM_COL32(250, 246, 234, 255);
constexpr ImU32 line = IM_COL32(60, 66, 70, 255);
constexpr const char* nothing = "(nothing written)";

/// A cup with its lid, and where the label sits on it.
void draw_cup(const std::string& label_place) {
  const float unit = ImGui::GetFontSize();
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImDrawList* list = ImGui::GetWindowDrawList();
  const ImVec2 top{at.x + unit, at.y + 0.4F * unit};
  const float wide = 5 * unit;
  const float high = 5 * unit;
  const float rim = 1.1F * unit;
  list->AddQuadFilled({top.x, top.y + rim}, {top.x + wide, top.y + rim},
                      {top.x + wide * 0.92F, top.y + rim + high}, {top.x + wide * 0.08F, top.y + rim + high},
                      glass);
  list->AddRectFilled({top.x - 0.3F * unit, top.y}, {top.x + wide + 0.3F * unit, top.y + rim}, lid, 3);
  const auto stick = [&](const ImVec2& low, const ImVec2& high_corner, int strokes) {
    list->AddRectFilled(low, high_corner, sticker, 2);
    list->AddRect(low, high_corner, line, 2);
    const float step = (high_corner.y - low.y) / static_cast<float>(strokes + 1);
    for (int i = 1; i <= strokes; ++i) {
      const float y = low.y + step * static_cast<float>(i);
      list->AddLine({low.x + 0.4F * unit, y}, {high_corner.x - 0.4F * unit, y}, line);
    }
  };
  if (label_place == "lid") {
    stick({top.x + 1.2F * unit, top.y + 0.15F * unit},
          {top.x + wide - 1.2F * unit, top.y + rim - 0.15F * unit}, 1);
  } else if (label_place == "container") {
    stick({top.x + unit, top.y + rim + 1.2F * unit}, {top.x + wide - unit, top.y + rim + 3.6F * unit}, 3);
  }
  ImGui::Dummy({wide + 2 * unit, rim + high + 0.8F * unit});
}

void draw_lines(const Paper& paper, const std::vector<reception::WrittenLine>& lines) {
  for (const auto& [name, value] : lines) {
    paper.line(name.c_str(), value.c_str(), nothing);
  }
}

void draw_form(const reception::Shown& shown, float width) {
  const Paper paper("REQUEST FORM  ·  Saint Brannoc's Teaching Hospital (invented)", width);
  draw_lines(paper, shown.form);
  std::string asked;
  for (const std::string& request : shown.requests) {
    asked += (asked.empty() ? "" : "; ") + request;
  }
  paper.line("Asked for", asked.c_str(), nothing);
}

void draw_label(const reception::Shown& shown, float width) {
  const bool none = shown.label_place == "none";
  const Paper paper(none                         ? "LABEL"
                    : shown.label_place == "lid" ? "LABEL  ·  stuck on the lid"
                                                 : "LABEL  ·  stuck on the container",
                    width);
  if (none) {
    paper.words("There is none, neither on the container nor on the lid.");
  }
  draw_lines(paper, shown.label);
}

void draw_container(const reception::Shown& shown, float width) {
  const Paper paper("CONTAINER  ·  as it stands before you", width);
  draw_lines(paper, shown.container);
}

void draw_day(const reception::ShownDay& day, float width) {
  const Paper paper("24-HOUR SHEET  ·  filled in by the patient", width);
  const std::string who = fmt::format("{}, {}", day.weight, day.sex);
  paper.line("Weight, sex", who.c_str(), nothing);
  int number = 0;
  for (const auto& one : day.voids) {
    const std::string name = fmt::format("{}.  {}", ++number, one.at);
    const std::string value =
        fmt::format("{}, {}", one.volume,
                    one.kept ? one.bottle == "bottle" ? std::string("into the bottle")
                                                      : "into the " + one.bottle + " bottle"
                             : std::string("NOT kept"));
    paper.line(name.c_str(), value.c_str(), nothing);
  }
  ImGui::Spacing();
  paper.words("Measured here, after turning the bottle over ten times:");
  draw_lines(paper, day.bottles);
}

/// The wheel turns over it by itself; these keys do the same.
void scroll_by_key() {
  const bool free = !ImGui::GetIO().WantTextInput;
  const float page = ImGui::GetWindowHeight() * 0.8F;
  if (free && ImGui::IsKeyPressed(GLFW_KEY_J, false)) {
    ImGui::SetScrollY(ImGui::GetScrollY() + page);
  }
  if (free && ImGui::IsKeyPressed(GLFW_KEY_K, false)) {
    ImGui::SetScrollY(ImGui::GetScrollY() - page);
  }
}

} // namespace

void draw_counter(App& app, const render::Rect& area) {
  draw_delivery(*app.desk->brief().reception, area);
}

void draw_delivery(const reception::Shown& shown, const render::Rect& area) {
  ImGui::SetNextWindowBgAlpha(1);
  const Pane pane("counter", area, ImGuiWindowFlags_NoFocusOnAppearing);
  scroll_by_key();
  const float gap = ImGui::GetFontSize() * 0.7F;
  const float room = ImGui::GetContentRegionAvail().x;
  constexpr float least_ems = 38; // Narrower, and the sheets lie below one another.
  if (room / ImGui::GetFontSize() < least_ems) {
    draw_label(shown, room);
    draw_form(shown, room);
    draw_container(shown, room);
    if (shown.day) {
      draw_day(*shown.day, room);
    }
    return;
  }
  const float left = room * 0.56F;
  const float right = room - left - gap;
  ImGui::BeginGroup();
  draw_form(shown, left);
  if (shown.day) {
    draw_container(shown, left);
  }
  ImGui::EndGroup();
  ImGui::SameLine(0, gap);
  ImGui::BeginGroup();
  draw_label(shown, right);
  if (shown.day) {
    draw_day(*shown.day, right);
  } else {
    draw_container(shown, right);
    draw_cup(shown.label_place);
  }
  ImGui::EndGroup();
}

} // namespace matula::window
