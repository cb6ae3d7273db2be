#include "engine/window/paper.hpp"

namespace matula::window {

namespace {

const ImVec4 ink{0.10F, 0.12F, 0.16F, 1.0F};
const ImVec4 print{0.33F, 0.30F, 0.26F, 1.0F}; // The form's own words: 7 to 1 on the paper.
const ImVec4 red{0.62F, 0.10F, 0.08F, 1.0F};
constexpr ImU32 sheet = IM_COL32(250, 246, 234, 255);
constexpr ImU32 edge = IM_COL32(150, 140, 120, 255);
constexpr float name_share = 0.34F;

} // namespace

Paper::Paper(const char* title, float width)
    : corner_(ImGui::GetCursorScreenPos()), width_(width), margin_(ImGui::GetFontSize() * 0.6F) {
  layers_.Split(ImGui::GetWindowDrawList(), 2);
  layers_.SetCurrentChannel(ImGui::GetWindowDrawList(), 1);
  ImGui::SetCursorScreenPos({corner_.x + margin_, corner_.y + margin_});
  ImGui::BeginGroup();
  ImGui::PushStyleColor(ImGuiCol_Text, ink);
  ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + width_ - 2 * margin_);
  ImGui::TextColored(print, "%s", title);
  const ImVec2 under = ImGui::GetCursorScreenPos();
  ImGui::GetWindowDrawList()->AddLine(under, {corner_.x + width_ - margin_, under.y}, edge);
  ImGui::Spacing();
}

Paper::~Paper() {
  ImGui::PopTextWrapPos();
  ImGui::PopStyleColor();
  ImGui::EndGroup();
  ImDrawList* list = ImGui::GetWindowDrawList();
  const ImVec2 low{corner_.x + width_, ImGui::GetItemRectMax().y + margin_};
  layers_.SetCurrentChannel(list, 0);
  list->AddRectFilled(corner_, low, sheet, margin_ * 0.3F);
  list->AddRect(corner_, low, edge, margin_ * 0.3F);
  layers_.Merge(list);
  ImGui::SetCursorScreenPos(corner_);
  ImGui::Dummy({width_, low.y - corner_.y});
}

void Paper::line(const char* name, const char* value, const char* blank) const {
  const float left = ImGui::GetCursorScreenPos().x;
  const ImVec2 begin = ImGui::GetCursorScreenPos();
  const float column = (width_ - 2 * margin_) * name_share;
  ImGui::PushTextWrapPos(ImGui::GetCursorPosX() + column);
  ImGui::TextColored(print, "%s", name);
  ImGui::PopTextWrapPos();
  const float name_end = ImGui::GetCursorScreenPos().y;
  ImGui::SetCursorScreenPos({left + column + margin_, begin.y});
  if (value[0] == '\0') {
    ImGui::TextColored(red, "%s", blank);
  } else {
    ImGui::TextUnformatted(value);
  }
  const float value_end = ImGui::GetCursorScreenPos().y;
  ImGui::SetCursorScreenPos({left, name_end > value_end ? name_end : value_end});
}

void Paper::words(const char* text) const {
  ImGui::TextUnformatted(text);
}

} // namespace matula::window
