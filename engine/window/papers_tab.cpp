#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"
#include "sim/optics/colour.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::window {

namespace {

const ImU32 k_edge = IM_COL32(90, 90, 86, 255);

ImU32 shown(const optics::Xyz& colour) {
  const optics::LinearRgb rgb = optics::to_display(colour);
  const auto byte = [](double linear) {
    return static_cast<int>(std::lround(255 * optics::encode_srgb(linear)));
  };
  return IM_COL32(byte(rgb.r), byte(rgb.g), byte(rgb.b), 255);
}

/// Short enough to stand under a field.
std::string brief(const std::string& word) {
  return word == "negative" ? "neg." : word == "positive" ? "pos." : word == "normal" ? "norm." : word;
}

const bench::SeenPaper* chosen_paper(const App& app) {
  for (const bench::SeenPaper& paper : app.scene->papers) {
    if (paper.name == app.hands.paper) {
      return &paper;
    }
  }
  return app.scene->papers.empty() ? nullptr : &app.scene->papers.back();
}

void draw_dip(App& app) {
  heading("Dip a paper into the vessel in hand");
  for (const bench::SeenCard& card : app.scene->cards) {
    const bool first = &card == &app.scene->cards.front();
    if (!first) {
      ImGui::SameLine();
    }
    if (app.widgets.choice(("paper.kind=" + card.kind).c_str(), card.label,
                           app.hands.paper_kind == card.kind)) {
      app.hands.paper_kind = card.kind;
    }
  }
  app.widgets.number("paper.seconds", app.hands.dip_s, 0.5, 120, number_width(), "%.1f");
  ImGui::SameLine();
  ImGui::TextUnformatted("s");
  ImGui::SameLine();
  if (app.widgets.button("paper.dip", "Dip into " + say_vessel(app.hands.vessel))) {
    app.hands.paper.clear(); // The new one comes to hand.
    app.act(bench::DipPaper{app.hands.paper_kind, app.hands.vessel, app.hands.dip_s},
            "Dipped. Blot its edge, and let time run to the moment of reading.");
  }
}

void draw_handling(App& app, const bench::SeenPaper& paper) {
  std::vector<std::string> names;
  int chosen = 0;
  for (const bench::SeenPaper& each : app.scene->papers) {
    chosen = each.name == paper.name ? static_cast<int>(names.size()) : chosen;
    names.push_back(each.label + " " + each.name.substr(each.name.rfind('-') + 1));
  }
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 9);
  if (app.widgets.pick("paper.which", "##which", names, chosen)) {
    app.hands.paper = app.scene->papers[static_cast<std::size_t>(chosen)].name;
  }
  ImGui::SameLine();
  ImGui::Text("wet for %s", say_time(paper.wet_for_s).c_str());
  app.widgets.tell("paper.wet_for_s", fmt::format("{:.1f}", paper.wet_for_s));
  if (app.widgets.button("paper.blot", paper.blotted ? "Blotted" : "Blot", !paper.blotted)) {
    app.act(bench::BlotPaper{paper.name}, "Blotted: nothing runs from pad to pad now.");
  }
  ImGui::SameLine();
  if (app.widgets.button("paper.look", "Hold beside the card")) {
    app.act(bench::LookAtPaper{paper.name}, "Held beside its card.");
  }
  ImGui::SameLine();
  if (app.widgets.button("paper.discard", "Discard")) {
    app.act(bench::DiscardPaper{paper.name}, "Into the bin for infectious waste.");
  }
  const auto& shelf = app.desk->brief().reagents_out;
  if (shelf.empty()) {
    return;
  }
  const std::string& reagent = shelf[static_cast<std::size_t>(app.hands.bottle)];
  app.widgets.number("paper.drops", app.hands.drops_on, 1, 20, number_width() * 0.8F, "%.0f");
  ImGui::SameLine();
  if (app.widgets.button("paper.drop", "drops of " + app.ground.bottle_label(reagent) + " on it")) {
    app.act(bench::DropOn{paper.name, reagent, app.hands.drops_on}, "Dropped on the paper.");
  }
}

void field(const ImVec2& at, float wide, float tall, ImU32 colour) {
  ImDrawList* ink = ImGui::GetWindowDrawList();
  ink->AddRectFilled(at, {at.x + wide, at.y + tall}, colour);
  ink->AddRect(at, {at.x + wide, at.y + tall}, k_edge);
}

/// The pad at the left, its row of the card at the right, on the same white.
void draw_row(App& app, const bench::SeenCardRow& row, const bench::SeenPaper& paper) {
  const float text = ImGui::GetTextLineHeight();
  const float name_w = ImGui::GetFontSize() * 6.6F;
  const float pad_w = text * 1.6F;
  const float tall = text * 1.25F;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float room = ImGui::GetContentRegionAvail().x - name_w - pad_w - text;
  const float wide = room / static_cast<float>(std::max<std::size_t>(row.fields.size(), 1));
  ImDrawList* ink = ImGui::GetWindowDrawList();
  const ImU32 words = ImGui::GetColorU32(ImGuiCol_Text);
  const ImU32 faint = ImGui::GetColorU32(ImGuiCol_TextDisabled);
  ink->AddText(at, words, row.label.c_str());
  ink->AddText({at.x, at.y + text}, faint, fmt::format("read at {:g} s", row.read_at_s).c_str());
  ink->AddRectFilled({at.x + name_w - 3, at.y - 2}, {at.x + name_w + pad_w + 3, at.y + tall + text + 6},
                     IM_COL32(244, 244, 242, 255)); // The strip's own white.
  for (const bench::SeenPad& pad : paper.pads) {
    if (pad.key == row.key) {
      field({at.x + name_w, at.y + 1}, pad_w, tall, shown(pad.colour));
      app.widgets.note_at("paper.pad." + pad.key, at.x + name_w + pad_w / 2, at.y + tall / 2);
    }
  }
  for (std::size_t i = 0; i < row.fields.size(); ++i) {
    const ImVec2 corner{at.x + name_w + pad_w + text + wide * static_cast<float>(i), at.y + 1};
    field(corner, wide - 3, tall, shown(row.fields[i].second));
    ink->AddText({corner.x, corner.y + tall}, words, brief(row.fields[i].first).c_str());
  }
  ImGui::Dummy({ImGui::GetContentRegionAvail().x, tall + text + 5});
}

} // namespace

void draw_papers_tab(App& app) {
  if (app.scene->cards.empty()) {
    ImGui::TextUnformatted("No papers are out for this case.");
    return;
  }
  draw_dip(app);
  const bench::SeenPaper* paper = chosen_paper(app);
  if (paper == nullptr) {
    ImGui::TextDisabled("No paper has been used yet.");
    return;
  }
  heading("The paper");
  const bench::SeenPaper held = *paper; // Acting renews the scene.
  draw_handling(app, held);
  for (const bench::SeenCard& card : app.scene->cards) {
    if (card.kind != held.kind) {
      continue;
    }
    heading("Beside its reference card");
    for (const bench::SeenCardRow& row : card.rows) {
      draw_row(app, row, held);
    }
  }
}

} // namespace matula::window
