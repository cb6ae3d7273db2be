// Pages of the form: rows, and what can be ticked and added.
#include "engine/window/author_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

using drafting::Entry;
using drafting::Row;
using drafting::Studio;

constexpr const char* not_written = "(not written)";

void want_set(AuthorView& view, const std::string& path, const std::string& typed) {
  view.wanted = [path, typed](Studio& studio) { return studio.set(path, typed); };
}

/// What there is to know of a row, for whoever stands on it.
void note_hint(AuthorView& view, const Row& row) {
  if (!ImGui::IsItemFocused() && !ImGui::IsItemHovered()) {
    return;
  }
  view.hint = row.label + ": " + row.range + (row.range.empty() || row.about.empty() ? "" : "; ") +
              row.about + (row.range.empty() && row.about.empty() ? "in your own words" : "") + ".";
}

void draw_choice(App& app, const Row& row, const std::string& name) {
  std::vector<std::string> options = row.choices;
  if (row.optional) {
    options.insert(options.begin(), not_written);
  }
  const auto at =
      std::find(options.begin(), options.end(), row.value.empty() && row.optional ? not_written : row.value);
  int chosen = at == options.end() ? -1 : static_cast<int>(at - options.begin());
  ImGui::SetNextItemWidth(std::min(ImGui::GetFontSize() * 11, ImGui::GetContentRegionAvail().x));
  if (app.widgets.pick(name.c_str(), "##choice", options, chosen)) {
    want_set(*app.author, row.path,
             row.optional && chosen == 0 ? "" : options[static_cast<std::size_t>(chosen)]);
  }
  note_hint(*app.author, row);
}

void draw_steps(App& app, const Row& row) {
  AuthorView& view = *app.author;
  for (const bool more : {false, true}) {
    ImGui::SameLine();
    if (app.widgets.button(((more ? "more." : "less.") + row.path).c_str(), more ? "+" : "-",
                           !row.value.empty())) {
      view.wanted = [path = row.path, more](Studio& studio) { return studio.step(path, more); };
    }
    note_hint(view, row);
  }
}

/// A field does not break its lines: what is too long for it is shown below as it will be read.
void draw_read(const std::string& words) {
  ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
  ImGui::TextWrapped("%s", words.c_str());
  ImGui::PopStyleColor();
}

void draw_row(App& app, const Row& row) {
  AuthorView& view = *app.author;
  const float em = ImGui::GetFontSize();
  const float room = ImGui::GetContentRegionAvail().x;
  const float label_w = std::min(em * 9, room * 0.4F);
  const float steps_w = width_of("-") + width_of("+") + 2 * ImGui::GetStyle().ItemSpacing.x;
  const float field_w = std::min(em * 8, room - label_w - steps_w - em / 2);
  const std::string name = "row." + row.path;
  std::string& typed = view.typed.try_emplace(row.path, row.value).first->second;
  ImGui::AlignTextToFramePadding();
  const float left = ImGui::GetCursorPosX();
  ImGui::TextUnformatted(row.label.c_str());
  bool cut_off = false; // What stands in the field is longer than it.
  const bool long_label = ImGui::GetItemRectSize().x > label_w - em / 2;
  if (row.entry == Entry::Paragraph) {
    if (app.widgets.lines(name.c_str(), typed, em * 5)) {
      want_set(view, row.path, typed);
    }
    note_hint(view, row);
    cut_off = ImGui::CalcTextSize(typed.c_str()).x > ImGui::GetContentRegionAvail().x - em;
  } else {
    if (long_label) {
      ImGui::SetCursorPosX(left + label_w);
    } else {
      ImGui::SameLine(left + label_w);
    }
    if (row.entry == Entry::Choice || row.entry == Entry::YesNo) {
      draw_choice(app, row, name);
    } else {
      const bool wordy = row.entry == Entry::Line || row.entry == Entry::Numbers;
      const float width = wordy ? (row.removable ? -em * 5 : -em / 2) : field_w;
      const float shown_w = wordy ? ImGui::GetContentRegionAvail().x + width : field_w;
      if (app.widgets.line(name.c_str(), typed, width)) {
        want_set(view, row.path, typed);
      }
      note_hint(view, row);
      cut_off = ImGui::CalcTextSize(typed.c_str()).x > shown_w - em;
    }
  }
  if (row.can_step) {
    draw_steps(app, row);
  }
  if (row.has_more) {
    ImGui::SameLine();
    if (app.widgets.button(("more_of." + row.path).c_str(), "one more option")) {
      view.wanted = [path = row.path](Studio& studio) { return studio.add_option(path); };
    }
    note_hint(view, row);
  }
  if (row.removable) {
    if (width_of("remove") < room_after()) {
      ImGui::SameLine();
    } else {
      ImGui::SetCursorPosX(left + label_w); // Under the field it belongs to.
    }
    if (app.widgets.button(("remove." + row.path).c_str(), "remove")) {
      view.wanted = [path = row.path](Studio& studio) { return studio.remove(path); };
    }
    note_hint(view, row);
  }
  if (cut_off) {
    draw_read(typed);
  }
  if (!row.problem.empty()) {
    ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_CheckMark));
    ImGui::TextWrapped("%s", row.problem.c_str());
    ImGui::PopStyleColor();
  }
}

void draw_additions(App& app) {
  AuthorView& view = *app.author;
  const auto& additions = view.studio->form().additions;
  std::vector<std::string> labels;
  for (const auto& one : additions) {
    labels.push_back(one.label);
  }
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Add");
  ImGui::SameLine();
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 16);
  view.addition = -1;
  if (app.widgets.pick("add.substance", "##add", labels, view.addition)) {
    view.wanted = [path = additions[static_cast<std::size_t>(view.addition)].path](Studio& studio) {
      return studio.add(path);
    };
  }
}

} // namespace

void draw_author_ticks(App& app, const std::string& prefix, const std::vector<drafting::Tick>& ticks,
                       std::string (Studio::*change)(const std::string&, bool)) {
  for (const auto& tick : ticks) {
    bool on = tick.on;
    if (app.widgets.tick((prefix + tick.key).c_str(), tick.label, on)) {
      app.author->wanted = [key = tick.key, on, change](Studio& studio) { return (studio.*change)(key, on); };
    }
    if (ImGui::IsItemFocused() && !tick.about.empty()) {
      app.author->hint = "On the form: " + tick.about + ".";
    }
  }
}

void draw_author_rows(App& app, const std::string& group) {
  const auto& groups = app.author->studio->form().groups;
  const auto found =
      std::find_if(groups.begin(), groups.end(), [&](const auto& one) { return one.key == group; });
  if (found == groups.end()) {
    ImGui::TextWrapped("The text is not TOML as it stands: put it right on the page File, or go back.");
    return;
  }
  heading(found->title.c_str());
  for (const Row& row : found->rows) {
    draw_row(app, row);
  }
}

void draw_author_way(App& app) {
  AuthorView& view = *app.author;
  draw_author_rows(app, "way");
  ImGui::Spacing();
  if (app.widgets.button("add.leg", "One more leg")) {
    view.wanted = [](Studio& studio) { return studio.add_leg(); };
  }
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Put in");
  ImGui::SameLine();
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 16);
  const auto& bottles = view.studio->form().preservatives;
  view.preservative = -1;
  if (app.widgets.pick("add.preservative", "##preservative", bottles, view.preservative)) {
    view.wanted = [bottle = bottles[static_cast<std::size_t>(view.preservative)]](Studio& studio) {
      return studio.add_preservative(bottle);
    };
  }
}

void draw_author_asked(App& app) {
  heading("What is asked of the student");
  ImGui::TextWrapped("A test that is asked for brings out the bottles it takes.");
  draw_author_ticks(app, "ask.", app.author->studio->form().tests, &Studio::ask_for);
}

void draw_author_bottles(App& app) {
  draw_author_rows(app, "bench");
  if (app.author->studio->form().groups.empty()) {
    return;
  }
  draw_author_rows(app, "rules");
  draw_author_rows(app, "ages");
  heading("Bottles that are out");
  draw_author_ticks(app, "out.", app.author->studio->form().bottles, &Studio::put_out);
}

void draw_author_file(App& app) {
  AuthorView& view = *app.author;
  ImGui::TextWrapped(
      "The case as it is saved. What the form has no row for (the changelog and the worked sittings of "
      "[review], keys of questions and of their options) is written here.");
  std::string& text = view.typed.try_emplace("", view.studio->text()).first->second;
  const float height = std::max(ImGui::GetContentRegionAvail().y - ImGui::GetStyle().ItemSpacing.y,
                                ImGui::GetTextLineHeight() * 6);
  if (app.widgets.lines("file.text", text, height)) {
    view.wanted = [text](Studio& studio) {
      studio.set_text(text);
      return std::string();
    };
  }
}

void draw_author_page(App& app) {
  switch (app.author->page) {
  case AuthorPage::Specimen:
    draw_author_rows(app, "specimen");
    if (!app.author->studio->form().groups.empty()) {
      draw_author_rows(app, "substances");
      draw_additions(app);
    }
    break;
  case AuthorPage::Way:
    draw_author_way(app);
    break;
  case AuthorPage::Request:
    draw_author_rows(app, "request");
    draw_author_rows(app, "review");
    break;
  case AuthorPage::Counter:
    draw_author_counter(app);
    break;
  case AuthorPage::Marks:
    draw_author_marks(app);
    break;
  case AuthorPage::Asked:
    draw_author_asked(app);
    break;
  case AuthorPage::Bench:
    draw_author_bottles(app);
    break;
  case AuthorPage::Questions:
    draw_author_rows(app, "questions");
    if (app.widgets.button("add.question", "One more question")) {
      app.author->wanted = [](Studio& studio) { return studio.add_question(); };
    }
    break;
  case AuthorPage::Wish:
    draw_author_wish(app);
    break;
  case AuthorPage::File:
    draw_author_file(app);
    break;
  }
}

} // namespace matula::window
