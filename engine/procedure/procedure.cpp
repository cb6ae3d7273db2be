#include "engine/procedure/procedure.hpp"

#include "engine/assets/world.hpp"
#include "engine/procedure/read_recipe.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>
#include <system_error>

namespace matula::procedure {

namespace {

using strict::Table;

const std::vector<std::string> usual_words{"negative", "trace", "1+", "2+", "3+", "4+"};
const std::vector<std::string> scale_names{"heat_cloud", "acid_cloud", "copper_colour", "colour",
                                           "paper",      "powder",     "cloud_ring"};
const std::vector<std::string> result_names{"word", "number"};
const std::vector<std::string> places{"tube", "ring", "upper", "lower", "paper"};

std::size_t index_of(const std::string& word, const std::vector<std::string>& words) {
  return static_cast<std::size_t>(std::find(words.begin(), words.end(), word) - words.begin());
}

void check_lines(const Table& t, const std::vector<double>& lines, const std::vector<std::string>& seen,
                 std::size_t words) {
  if (!std::is_sorted(lines.begin(), lines.end())) {
    t.complain("lines", "values that rise from left to right");
  }
  if (seen.size() != words) {
    t.complain("seen", std::to_string(words) + " descriptions, one a word");
  }
}

/// The lines that part the words and what is seen at each.
reading::ColourScale read_lines(const Table& t, std::size_t words) {
  reading::ColourScale scale;
  scale.where = reading::Where::Ring;
  scale.lines = t.numbers("lines", {1e-3, 100, ""}, words - 1);
  scale.seen = t.texts_or_none("seen");
  (void)t.text("source");
  check_lines(t, scale.lines, scale.seen, words);
  return scale;
}

/// [number]: which instrument shows it and how near a reader must come.
void read_number(const Table& root, Procedure& p) {
  const Table t = root.table("number");
  p.number.instrument = t.text("instrument");
  p.number.unit = t.text_or("unit", "");
  p.number.example = t.text("example");
  p.number.division = t.number("division", {1e-6, 100, p.number.unit});
  p.number.full = t.number("full", {0, 1e4, p.number.unit});
  p.number.none = t.number("none", {0, 1e4, p.number.unit});
  (void)t.text("source");
  if (p.number.none <= p.number.full) {
    t.complain("none", "more than what earns full marks");
  }
}

/// [curve]: the standards, the blank and how finely the curve is read.
void read_curve(const Table& root, Procedure& p) {
  const auto t = root.table_if_any("curve");
  if (!t) {
    return;
  }
  constexpr std::size_t fewest = 2;
  Curve curve;
  curve.standards = t->texts_or_none("standards");
  curve.values = t->numbers("values", {1e-3, 1e5, p.number.unit}, curve.standards.size());
  curve.blank = t->text("blank");
  curve.wavelength_nm = t->number("wavelength_nm", {400, 700, "nm"});
  curve.read_within = t->number("read_within", {0.001, 0.2, ""});
  (void)t->text("source");
  if (curve.standards.size() < fewest) {
    t->complain("standards", "at least two bottles, weakest first");
  }
  if (!std::is_sorted(curve.values.begin(), curve.values.end())) {
    t->complain("values", "values that rise, one a standard");
  }
  p.curve = std::move(curve);
}

/// [powder]: shares that have sunk and what is seen.
reading::PowderScale read_powder(const Table& t, std::size_t words) {
  reading::PowderScale scale;
  scale.lines = t.numbers("lines", {1e-3, 1, ""}, words - 1);
  scale.seen = t.texts_or_none("seen");
  (void)t.text("source");
  check_lines(t, scale.lines, scale.seen, words);
  return scale;
}

/// [paper]: which pad of which paper, and what its words stand for.
reading::PaperScale read_paper(const Table& t, std::size_t words) {
  reading::PaperScale scale;
  scale.paper = t.text("paper");
  scale.pad = t.text("pad");
  scale.values = t.numbers_or_none("values", {0, 1e6, ""});
  (void)t.text("source");
  const bool rising = std::is_sorted(scale.values.begin(), scale.values.end());
  if (!scale.values.empty() && (scale.values.size() != words || !rising)) {
    t.complain("values", std::to_string(words) + " values that rise, one a word");
    scale.values.clear();
  }
  return scale;
}

/// [colour]: where it is looked for and its hue, the lines and what is seen.
reading::ColourScale read_colour(const Table& t, std::size_t words) {
  reading::ColourScale scale = read_lines(t, words);
  scale.where = static_cast<reading::Where>(index_of(t.word("where", places), places));
  scale.hue_deg = t.number("hue_deg", {0, 360, "degrees"});
  return scale;
}

void read_scale(const Table& root, Procedure& p) {
  p.words = root.texts_or_none("words");
  if (p.words.empty()) {
    p.words = usual_words;
  }
  const bool card =
      root.word("scale", scale_names) == "paper"; // Its rows may be finer than the trade's words.
  const std::size_t most = card ? most_words : usual_words.size();
  if (p.words.size() < 2 || p.words.size() > most) {
    root.complain("words", "two to " + std::string(card ? "twelve" : "six") + " words, lowest first");
    p.words = usual_words;
  }
  p.scale = static_cast<reading::ScaleKind>(index_of(root.word("scale", scale_names), scale_names));
  if (p.scale.kind == reading::ScaleKind::Colour) {
    p.scale.colour = read_colour(root.table("colour"), p.words.size());
    if (p.scale.on_paper()) {
      p.scale.paper.paper = root.table("colour").text("paper");
      p.scale.paper.pad = root.table("colour").text("pad");
      p.scale.paper.drop = root.table("colour").text("drop");
    }
  } else if (p.scale.kind == reading::ScaleKind::Paper) {
    p.scale.paper = read_paper(root.table("paper"), p.words.size());
  } else if (p.scale.kind == reading::ScaleKind::Powder) {
    p.scale.powder = read_powder(root.table("powder"), p.words.size());
  } else if (p.scale.kind == reading::ScaleKind::CloudRing) {
    p.scale.colour = read_lines(root.table("ring"), p.words.size());
  } else if (p.words != usual_words) {
    root.complain("words", "no words of its own: this scale has its six");
  }
}

void read_result(const Table& root, Procedure& p) {
  p.result = static_cast<Result>(index_of(root.word_or("result", result_names, "word"), result_names));
  if (p.result == Result::Number) {
    read_number(root, p);
    read_curve(root, p);
    return;
  }
  read_scale(root, p);
  p.reportable = index_of(root.word("reportable", p.words), p.words);
}

void read_recognition(const Table& root, Procedure& p) {
  p.needs = root.texts_or_none("needs");
  p.reagents = root.texts_or_none("reagents");
  if (!p.reagents.empty()) {
    p.strengths = root.numbers("strengths", {0.01, 100, "times"}, p.reagents.size());
  }
  p.with = root.texts_or_none("with");
  p.without = root.texts_or_none("without");
}

void read_stands_for(const Table& root, Procedure& p) {
  const auto table = root.table_if_any("stands_for");
  if (!table) {
    return;
  }
  p.stands_for = table->word("what", {"protein", "sugar"});
  const auto pairs = table->numbers("g_per_dl", {0, 20, "g/dL"}, 2 * p.words.size());
  for (std::size_t i = 0; i + 1 < pairs.size() && i / 2 < p.grade_g_per_dl.size(); i += 2) {
    p.grade_g_per_dl[i / 2] = {pairs[i], pairs[i + 1]};
  }
  (void)table->text("source");
}

Procedure read_file(strict::File& file, const std::string& key, const CheckRule& check) {
  const Table root = file.root();
  Procedure p;
  p.key = root.word("key", {key});
  p.label = root.text("label");
  p.title = root.text("title");
  p.request = root.text("request");
  p.order = root.integer("order", {1, 1000, ""});
  p.source = root.text("source");
  p.share = root.integer("share", {0, 100, "shares"});
  p.under_reading_percent = root.integer("under_reading_percent", {0, 300, "%"});
  read_result(root, p);
  read_recognition(root, p);
  read_stands_for(root, p);
  p.recipe = read_recipe(root, p.key);
  for (const auto& row : root.tables_or_none("rule")) {
    p.rules.push_back(read_rule(row, {p.key}, check));
  }
  return p;
}

} // namespace

std::string Procedure::word(reading::Grade grade) const {
  if (words.empty()) {
    return "";
  }
  const auto index = static_cast<std::size_t>(grade);
  return words[std::min(index, words.size() - 1)];
}

std::optional<reading::Grade> Procedure::grade(std::string_view word) const {
  const auto found = std::find(words.begin(), words.end(), word);
  return found == words.end() ? std::nullopt
                              : std::optional(static_cast<reading::Grade>(found - words.begin()));
}

tl::expected<std::vector<Procedure>, scenario::Problems> load(const std::filesystem::path& procedures_folder,
                                                              const CheckRule& check) {
  const auto files = strict::files_in(procedures_folder, ".toml");
  if (files.empty()) {
    return tl::make_unexpected(scenario::Problems{
        {procedures_folder.string(), 0, 0, "", "no procedure files", "a folder with one file a test"}});
  }
  std::vector<Procedure> procedures;
  scenario::Problems problems;
  for (const auto& path : files) {
    strict::File file(path);
    procedures.push_back(read_file(file, path.stem().string(), check));
    const auto found = file.finish();
    problems.insert(problems.end(), found.begin(), found.end());
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  std::stable_sort(procedures.begin(), procedures.end(),
                   [](const Procedure& a, const Procedure& b) { return a.order < b.order; });
  return procedures;
}

const tl::expected<std::vector<Procedure>, scenario::Problems>& shipped() {
  static const auto procedures = load(assets::folder() / "procedures", {});
  return procedures;
}

const std::vector<Procedure>& shipped_list() {
  static const std::vector<Procedure> none;
  return shipped() ? *shipped() : none;
}

const Procedure* find_shipped(std::string_view key) {
  const auto& all = shipped_list();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Procedure& p) { return p.key == key; });
  return found == all.end() ? nullptr : &*found;
}

} // namespace matula::procedure
