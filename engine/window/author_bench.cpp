// The live bench beside the form: every asked test as the specimen would show it now.
#include "engine/window/author_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pads.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace matula::window {

namespace {

constexpr int first_slot = 8; // Those before belong to other screens.

void draw_cards(App& app) {
  struct Card {
    const char* name;
    const char* label;
    appearance::Card card;
  };
  constexpr Card cards[] = {{"card.white", "white", appearance::Card::White},
                            {"card.black", "black", appearance::Card::Black},
                            {"card.printed", "printed card", appearance::Card::Printed}};
  appearance::View& view = app.author->view;
  for (const Card& card : cards) {
    if (card.card != appearance::Card::White) {
      flow(width_of(card.label) + ImGui::GetFrameHeight());
    }
    if (app.widgets.choice(card.name, card.label, view.card == card.card)) {
      view.card = card.card;
    }
  }
}

bool same(const appearance::View& one, const appearance::View& other) {
  return one.card == other.card && one.lamp == other.lamp;
}

/// Draws what a test looks like when it, the card or the room for it has changed; keeps the picture
/// otherwise.
DrawnTube& tube_of(App& app, const std::string& test, unsigned version, int slot, int width, int height) {
  AuthorView& view = *app.author;
  DrawnTube& tube = view.tubes[test];
  if (tube.version == version && same(tube.view, view.view) && tube.width == width && tube.height == height) {
    return tube;
  }
  tube = {version, view.view, width, height, 0, {}};
  if (test.empty()) {
    tube.looks.vessel = view.studio->specimen(view.view);
  } else {
    tube.looks = view.studio->looks(test, view.view);
  }
  if (tube.looks.vessel && tube.looks.floating) {
    tube.texture = app.view.float_in_jar(slot, *tube.looks.vessel, *tube.looks.floating, width, height);
  } else if (tube.looks.vessel) {
    tube.texture = app.view.side_by_side(slot, {*tube.looks.vessel}, width, height);
  }
  return tube;
}

void draw_tube(App& app, const DrawnTube& tube, bool fresh) {
  const auto width = static_cast<float>(tube.width);
  const auto height = static_cast<float>(tube.height);
  if (tube.texture != 0) {
    const ImVec4 tint = fresh ? ImVec4{1, 1, 1, 1} : ImVec4{1, 1, 1, 0.45F};
    // Dear ImGui takes a texture's name in the guise of a pointer. NOLINTNEXTLINE(performance-no-int-to-ptr)
    ImGui::Image(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(tube.texture)), {width, height},
                 {0, 1}, {1, 0}, tint);
    if (ImGui::IsItemHovered()) {
      draw_hue_tip(app);
    }
  } else if (tube.looks.pad) {
    const float side = height * 0.5F;
    const float rim = side * 0.1F;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    draw_pad(*tube.looks.pad, {at.x + rim, at.y + rim}, side);
    draw_fields(tube.looks.row, {at.x, at.y + side + 2 * rim + 2}, width, height * 0.2F);
    ImGui::Dummy({width, height});
  } else {
    ImGui::Dummy({width, height});
  }
}

void wrapped(const std::string& words) {
  if (!words.empty()) {
    ImGui::TextWrapped("%s", words.c_str());
  }
}

void draw_test(App& app, const drafting::SeenTest& test, int slot, int width, int height) {
  draw_tube(app, tube_of(app, test.test, test.version, slot, width, height), test.fresh);
  wrapped(test.title);
  if (test.word.empty()) {
    ImGui::TextDisabled("being done ...");
    return;
  }
  ImGui::PushStyleColor(ImGuiCol_Text,
                        ImGui::GetStyleColorVec4(test.fresh ? ImGuiCol_CheckMark : ImGuiCol_TextDisabled));
  wrapped(test.word + (test.fresh ? "" : " (before the change)"));
  ImGui::PopStyleColor();
  wrapped(test.line + (test.near_line ? ": too near" : ""));
  ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
  wrapped(test.seen);
  wrapped(test.note);
  ImGui::PopStyleColor();
}

void draw_specimen(App& app, const drafting::Seen& seen, int slot, int width, int height) {
  // Its version is that of the bench as a whole: it is drawn anew whenever anything on it is.
  unsigned version = seen.figures_fresh ? app.author->studio->version() : 0;
  const auto drawn = app.author->tubes.find("");
  if (version == 0 && drawn != app.author->tubes.end()) {
    version = drawn->second.version;
  }
  draw_tube(app, tube_of(app, "", version, slot, width, height), seen.figures_fresh);
  wrapped("The specimen, swirled");
  for (std::size_t i = 0; i < std::min<std::size_t>(2, seen.figures.size()); ++i) {
    wrapped(seen.figures[i].second);
  }
}

void draw_cells(App& app, const drafting::Seen& seen) {
  const float em = ImGui::GetFontSize();
  const float room = ImGui::GetContentRegionAvail().x;
  const int columns = std::max(2, static_cast<int>(room / (em * 9.5F)));
  const int height = static_cast<int>(em * 8);
  if (!ImGui::BeginTable("cells", columns, ImGuiTableFlags_SizingStretchSame | ImGuiTableFlags_PadOuterX)) {
    return;
  }
  int slot = first_slot;
  const auto next = [&] {
    ImGui::TableNextColumn();
    ++slot;
    return std::max(8, static_cast<int>(ImGui::GetContentRegionAvail().x));
  };
  int width = next();
  draw_specimen(app, seen, slot, width, height);
  if (seen.floating) {
    width = next();
    draw_test(app, *seen.floating, slot, width, height);
  }
  for (const auto& test : seen.tests) {
    width = next();
    draw_test(app, test, slot, width, height);
  }
  ImGui::EndTable();
}

void draw_figures(const drafting::Seen& seen) {
  const int columns =
      std::max(1, static_cast<int>(ImGui::GetContentRegionAvail().x / (ImGui::GetFontSize() * 16)));
  if (!ImGui::BeginTable("figures", columns, ImGuiTableFlags_SizingStretchSame)) {
    return;
  }
  for (const auto& [label, value] : seen.figures) {
    ImGui::TableNextColumn();
    const std::string words = label + ": " + value;
    if (ImGui::CalcTextSize(words.c_str()).x <= ImGui::GetContentRegionAvail().x) {
      ImGui::TextUnformatted(words.c_str());
    } else { // A number is not to be broken.
      ImGui::TextWrapped("%s:", label.c_str());
      ImGui::TextWrapped("%s", value.c_str());
    }
  }
  ImGui::EndTable();
}

void draw_state(const drafting::Seen& seen) {
  const auto fresh =
      std::count_if(seen.tests.begin(), seen.tests.end(), [](const auto& one) { return one.fresh; });
  const std::string state = !seen.trouble.empty() ? "The specimen cannot be made: " + seen.trouble
                            : seen.done           ? "By the book, on the specimen as it is."
                                        : fmt::format("By the book: {} of {} done on the specimen as it is.",
                                                      fresh, seen.tests.size());
  ImGui::TextWrapped("%s", state.c_str());
}

void draw_remarks(const drafting::Seen& seen) {
  if (!seen.warnings.empty()) {
    heading("No patient passes such a urine");
    for (const auto& words : seen.warnings) {
      point(words);
    }
  }
  std::vector<std::string> others;
  for (const auto& words : seen.advice) {
    if (std::find(seen.warnings.begin(), seen.warnings.end(), words) == seen.warnings.end()) {
      others.push_back(words);
    }
  }
  if (!others.empty()) {
    heading("To be looked at again");
    for (const auto& words : others) {
      point(words);
    }
  }
}

} // namespace

void draw_author_bench(App& app, const render::Rect& area) {
  AuthorView& view = *app.author;
  const Pane pane("bench", area, ImGuiWindowFlags_NoFocusOnAppearing);
  if (view.focus_bench > 0) {
    --view.focus_bench;
    app.widgets.focus_next();
  }
  draw_cards(app);
  const auto& seen = view.studio->seen();
  draw_state(seen);
  ImGui::BeginChild("live", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  const bool narrow = ImGui::GetContentRegionAvail().x < ImGui::GetFontSize() * 32;
  if (!narrow) {
    draw_figures(seen);
  }
  draw_cells(app, seen); // First of all where there is room for little.
  if (narrow) {
    draw_figures(seen);
  }
  draw_remarks(seen);
  ImGui::EndChild();
}

} // namespace matula::window
