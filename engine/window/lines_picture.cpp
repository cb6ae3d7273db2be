#include "engine/window/progress_view.hpp"

#include <imgui.h>

#include <algorithm>

namespace matula::window {

namespace {

constexpr double least = -0.5; // Grades at the left edge.
constexpr ImU32 reference_band = IM_COL32(58, 92, 90, 255);
constexpr ImU32 reference_other = IM_COL32(46, 72, 71, 255);
constexpr ImU32 own_band = IM_COL32(96, 80, 48, 255);
constexpr ImU32 own_other = IM_COL32(76, 64, 40, 255);
constexpr ImU32 interval = IM_COL32(250, 212, 102, 110);
constexpr ImU32 line_colour = IM_COL32(242, 240, 232, 255);
constexpr ImU32 words_colour = IM_COL32(242, 240, 232, 255);

using Lines = std::vector<double>;

/// One scale with its six bands, each with its word where the word fits.
class Scale {
public:
  /// `most`: grades at the right edge.
  Scale(ImVec2 at, float width, float height, double most)
      : at_(at), width_(width), height_(height), most_(most) {}

  [[nodiscard]] float x(double grade) const {
    const double share = (std::clamp(grade, least, most_) - least) / (most_ - least);
    return at_.x + width_ * static_cast<float>(share);
  }

  void bands(const Lines& lines, const std::vector<std::string>& words, ImU32 one, ImU32 other) const {
    double from = least;
    for (std::size_t i = 0; i <= lines.size(); ++i) {
      const double to = i < lines.size() ? lines[i] : most_;
      ImDrawList& draw = *ImGui::GetWindowDrawList();
      draw.AddRectFilled({x(from), at_.y}, {x(to), at_.y + height_}, i % 2 == 0 ? one : other);
      const std::string word = i < words.size() ? words[i] : "";
      const ImVec2 size = ImGui::CalcTextSize(word.c_str());
      if (size.x + 4 < x(to) - x(from)) {
        draw.AddText({(x(from) + x(to) - size.x) / 2, at_.y + (height_ - size.y) / 2}, words_colour,
                     word.c_str());
      }
      if (i < lines.size()) {
        draw.AddLine({x(to), at_.y}, {x(to), at_.y + height_}, line_colour, 2);
      }
      from = to;
    }
  }

  void interval_of(const desk::ShownLine& line) const {
    ImGui::GetWindowDrawList()->AddRectFilled({x(line.low), at_.y + height_ * 0.82F},
                                              {x(line.high), at_.y + height_}, interval);
  }

private:
  ImVec2 at_;
  float width_;
  float height_;
  double most_;
};

} // namespace

void draw_lines_picture(const desk::OwnLines& group) {
  Lines reference;
  Lines learner;
  for (const desk::ShownLine& line : group.lines) {
    reference.push_back(line.reference);
    learner.push_back(line.own);
  }
  const double most = static_cast<double>(group.words.size()) - 0.5;
  const float height = ImGui::GetTextLineHeight() * 1.9F;
  const float width = ImGui::GetContentRegionAvail().x;
  ImGui::TextUnformatted("A practised reader");
  ImVec2 at = ImGui::GetCursorScreenPos();
  Scale(at, width, height, most).bands(reference, group.words, reference_band, reference_other);
  ImGui::Dummy({width, height});
  ImGui::TextUnformatted("You");
  at = ImGui::GetCursorScreenPos();
  const Scale own(at, width, height, most);
  own.bands(learner, group.words, own_band, own_other);
  for (const desk::ShownLine& line : group.lines) {
    own.interval_of(line);
  }
  ImGui::Dummy({width, height});
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled("Weak tubes left, strong ones right. The lighter strip under each of your lines holds "
                      "it nine times in ten.");
  ImGui::PopTextWrapPos();
}

} // namespace matula::window
