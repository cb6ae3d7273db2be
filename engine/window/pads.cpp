#include "engine/window/pads.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace matula::window {

namespace {

const ImU32 k_edge = IM_COL32(90, 90, 86, 255);
const ImU32 k_strip_white = IM_COL32(244, 244, 242, 255);

/// Steele and Vigna's splitmix: where spots lie means nothing, it only must not dance from frame to frame.
std::uint64_t next(std::uint64_t& state) {
  state += 0x9E3779B97F4A7C15ULL;
  std::uint64_t z = state;
  z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
  z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
  return z ^ (z >> 31);
}

float share(std::uint64_t& state) {
  return static_cast<float>(next(state) >> 40) / static_cast<float>(1ULL << 24);
}

void draw_spots(const bench::SeenPad& pad, const ImVec2& at, float side) {
  ImDrawList* ink = ImGui::GetWindowDrawList();
  const ImVec2 to{at.x + side, at.y + side};
  ink->AddRectFilled(at, to, shown(pad.ground));
  // Spots lie by chance and overlap, so that 1 - exp(-n a) is covered.
  const double each = -std::log1p(-pad.spot_cover) / pad.spots;
  const float radius = side * static_cast<float>(std::sqrt(each / 3.14159265));
  const ImU32 colour = shown(pad.spot);
  std::uint64_t state = 1;
  ink->PushClipRect(at, to, true);
  for (int i = 0; i < pad.spots; ++i) {
    const ImVec2 middle{at.x + side * share(state), at.y + side * share(state)};
    if (radius < 1) {
      const float half = std::max(radius, 0.6F);
      ink->AddRectFilled({middle.x - half, middle.y - half}, {middle.x + half, middle.y + half}, colour);
    } else {
      ink->AddCircleFilled(middle, radius, colour, 10);
    }
  }
  ink->PopClipRect();
}

void draw_field(const ImVec2& at, float wide, float tall, ImU32 colour) {
  ImDrawList* ink = ImGui::GetWindowDrawList();
  ink->AddRectFilled(at, {at.x + wide, at.y + tall}, colour);
  ink->AddRect(at, {at.x + wide, at.y + tall}, k_edge);
}

} // namespace

ImU32 shown(const optics::Xyz& colour) {
  const optics::LinearRgb rgb = optics::to_display(colour);
  const auto byte = [](double linear) {
    return static_cast<int>(std::lround(255 * optics::encode_srgb(linear)));
  };
  return IM_COL32(byte(rgb.r), byte(rgb.g), byte(rgb.b), 255);
}

std::string brief(const std::string& word) {
  return word == "negative" ? "neg." : word == "positive" ? "pos." : word == "normal" ? "norm." : word;
}

void draw_pad(const bench::SeenPad& pad, const ImVec2& at, float side) {
  ImDrawList* ink = ImGui::GetWindowDrawList();
  const float rim = std::max(2.0F, side * 0.1F); // The strip's own white round it.
  ink->AddRectFilled({at.x - rim, at.y - rim}, {at.x + side + rim, at.y + side + rim}, k_strip_white);
  if (pad.spots > 0) {
    draw_spots(pad, at, side);
  } else {
    ink->AddRectFilled(at, {at.x + side, at.y + side}, shown(pad.colour));
  }
  ink->AddRect(at, {at.x + side, at.y + side}, k_edge);
}

void draw_fields(const bench::SeenCardRow& row, const ImVec2& at, float wide, float tall) {
  if (row.fields.empty()) {
    return;
  }
  ImDrawList* ink = ImGui::GetWindowDrawList();
  const float each = wide / static_cast<float>(row.fields.size());
  for (std::size_t i = 0; i < row.fields.size(); ++i) {
    const ImVec2 corner{at.x + each * static_cast<float>(i), at.y};
    draw_field(corner, each - 3, tall, shown(row.fields[i].second));
    const std::string word = brief(row.fields[i].first);
    const float spare = each - 3 - ImGui::CalcTextSize(word.c_str()).x;
    // Under the middle of its field; a word too wide for that begins with the field.
    ink->AddText({corner.x + std::max(spare / 2, 0.0F), corner.y + tall}, ImGui::GetColorU32(ImGuiCol_Text),
                 word.c_str());
  }
}

void draw_near(const bench::SeenPad& pad, const bench::SeenCardRow& row) {
  const float text = ImGui::GetTextLineHeight();
  const float side = text * 9;
  const float rim = side * 0.1F;
  const float wide = std::max(side, text * 2.6F * static_cast<float>(row.fields.size()));
  ImGui::TextUnformatted(pad.label.c_str());
  const ImVec2 at = ImGui::GetCursorScreenPos();
  draw_pad(pad, {at.x + rim, at.y + rim}, side);
  draw_fields(row, {at.x, at.y + side + 2 * rim + 2}, wide, text * 2);
  ImGui::Dummy({wide, side + 2 * rim + (row.fields.empty() ? 0 : text * 3 + 4)});
}

} // namespace matula::window
