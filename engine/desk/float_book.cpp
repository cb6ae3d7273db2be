#include "engine/desk/float_book.hpp"

#include "engine/assets/world.hpp"
#include "engine/desk/float_log.hpp"
#include "engine/quality/float_mornings.hpp"

#include <map>

namespace matula::desk {

namespace {

quality::FloatVerdict verdict_of(FloatDecision decision) {
  return decision == FloatDecision::Use       ? quality::FloatVerdict::Good
         : decision == FloatDecision::Correct ? quality::FloatVerdict::Correct
                                              : quality::FloatVerdict::Discard;
}

FloatLine judged_line(double reading, double water_c, double calibration_c,
                      const std::optional<double>& error, FloatDecision decision) {
  const auto judged = quality::judge_float(reading, water_c, calibration_c, {error, verdict_of(decision)});
  FloatLine line;
  line.water_c = water_c;
  line.reading = reading;
  line.written = true;
  line.error = error;
  line.decision = decision;
  line.error_right = judged.error_right;
  line.decision_right = judged.decision_right;
  line.words = judged.words;
  return line;
}

} // namespace

struct FloatBook::Impl {
  const assets::World* world = nullptr;
  std::filesystem::path kept;
  std::vector<quality::FloatSeries> series;
  std::map<std::size_t, std::vector<FloatLine>> written;

  [[nodiscard]] double reading(std::size_t which, std::size_t morning) const {
    const quality::FloatSeries& one = series.at(which);
    return quality::morning_reading(one, one.mornings.at(morning), world->urinometer);
  }
};

FloatBook::FloatBook(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
FloatBook::~FloatBook() = default;
FloatBook::FloatBook(FloatBook&&) noexcept = default;
FloatBook& FloatBook::operator=(FloatBook&&) noexcept = default;

tl::expected<FloatBook, scenario::Problems> FloatBook::load(const Ground& ground,
                                                            const std::filesystem::path& kept) {
  auto impl = std::make_unique<Impl>();
  impl->world = &ground.world();
  auto series = quality::load_floats(ground.assets_folder());
  if (!series) {
    return tl::make_unexpected(series.error());
  }
  impl->series = std::move(*series);
  FloatBook book(std::move(impl));
  for (const FloatLogLine& line : read_float_log(kept)) {
    book.repeat(line);
  }
  book.impl_->kept = kept;
  return book;
}

std::vector<std::string> FloatBook::titles() const {
  std::vector<std::string> titles;
  for (const quality::FloatSeries& one : impl_->series) {
    titles.push_back(one.title);
  }
  return titles;
}

FloatRecord FloatBook::record(std::size_t series) const {
  const quality::FloatSeries& one = impl_->series.at(series);
  FloatRecord record{one.title, one.story, one.calibration_c, {}, false, 0, 0, ""};
  if (const auto written = impl_->written.find(series); written != impl_->written.end()) {
    record.lines = written->second;
  }
  for (const FloatLine& line : record.lines) {
    record.possible += 2;
    record.earned += (line.error_right ? 1 : 0) + (line.decision_right ? 1 : 0);
    record.closed = record.closed || line.decision == FloatDecision::Discard;
  }
  const std::size_t next = record.lines.size();
  record.closed = record.closed || next >= one.mornings.size();
  if (record.closed) {
    record.remedy = one.remedy;
    return record;
  }
  FloatLine line;
  line.day = static_cast<int>(next) + 1;
  line.water_c = one.mornings[next].water_c;
  line.reading = impl_->reading(series, next);
  record.lines.push_back(line);
  return record;
}

bool FloatBook::write(std::size_t series, const std::optional<double>& error, FloatDecision decision) {
  const FloatRecord now = record(series);
  if (now.closed || !keep({impl_->series.at(series).key, false, error, decision})) {
    return now.closed;
  }
  const FloatLine& due = now.lines.back();
  FloatLine line = judged_line(due.reading, due.water_c, now.calibration_c, error, decision);
  line.day = due.day;
  impl_->written[series].push_back(std::move(line));
  return true;
}

bool FloatBook::clear(std::size_t series) {
  if (!keep({impl_->series.at(series).key, true, {}, {}})) {
    return false;
  }
  impl_->written.erase(series);
  return true;
}

bool FloatBook::keep(const FloatLogLine& line) const {
  return impl_->kept.empty() || append_float_log(impl_->kept, line);
}

void FloatBook::repeat(const FloatLogLine& line) {
  for (std::size_t i = 0; i < impl_->series.size(); ++i) {
    if (impl_->series[i].key == line.series) {
      (void)(line.afresh ? clear(i) : write(i, line.error, line.decision)); // Nothing is kept while reading.
    }
  }
}

FloatLine FloatBook::judge_on_bench(double reading, double water_c, double calibration_c,
                                    const std::optional<double>& error, FloatDecision decision) const {
  return judged_line(reading, water_c, calibration_c, error, decision);
}

} // namespace matula::desk
