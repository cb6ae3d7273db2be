#include "engine/records/import.hpp"

#include "engine/records/in_order.hpp"
#include "engine/records/squeeze.hpp"
#include "engine/records/trouble.hpp"

#include <fmt/format.h>

namespace matula::records {

namespace {

/// A sitting read and, unless it is known, marked.
struct Made {
  std::string came_from;
  bool known = false;
  std::string wrong;
  std::optional<Marked> marked;
  std::optional<Incoming> incoming; ///< Of a known one that came with checks.
};

std::string one_line(const std::string& words) {
  return words.substr(0, words.find('\n'));
}

class Import {
public:
  Import(Store& store, const ImportWishes& wishes, const Progress& progress, std::size_t total)
      : store_(store), wishes_(wishes), progress_(progress), total_(total), latest_s_(store.latest_s()) {
    if (wishes.now_s < latest_s_) {
      sum_.warnings.push_back(fmt::format(
          "The clock of this machine stands {} s before the time of the last import. Sittings are kept in "
          "the "
          "order of their numbers, so nothing is mixed up; set the clock right for the dates' sake.",
          latest_s_ - wishes.now_s));
    }
  }

  void take(Made made) {
    std::string words;
    long long number = 0;
    if (!made.wrong.empty()) {
      sum_.refused.push_back({made.came_from, made.wrong});
      words = "refused: " + one_line(made.wrong);
    } else if (made.known) {
      ++sum_.known;
      words = keep_review(made.incoming) ? "known already; what was found now is kept beside it"
                                         : "known already";
    } else {
      words = keep(*made.marked, number);
    }
    ++done_;
    if (progress_) {
      progress_({done_, total_, made.came_from, words, number});
    }
  }

  [[nodiscard]] ImportSum& sum() { return sum_; }

private:
  /// The same log as before, in a result that does not fit it.
  bool keep_review(const std::optional<Incoming>& in) {
    return in && store_.keep_review(in->pseudonym, in->exercise, content_name(in->log_text), in->checks);
  }

  std::string keep(const Marked& marked, long long& number) {
    const Stored stored = store_.add(marked, wishes_.now_s);
    number = stored.number;
    if (stored.how == Stored::How::Known || stored.how == Stored::How::Earlier) {
      ++sum_.known;
      return fmt::format("known already, number {}", stored.number);
    }
    ++sum_.fresh;
    sum_.goes_on += stored.how == Stored::How::Goes_on ? 1 : 0;
    if (!stored.same_log_as.empty()) {
      sum_.warnings.push_back(fmt::format("{} handed in the very log of {} (sitting {}): look at both.",
                                          marked.incoming.pseudonym, stored.same_log_as, stored.number));
    }
    if (marked.cut_off) {
      sum_.warnings.push_back(fmt::format("The last line of sitting {} was cut short and is left out ({}).",
                                          stored.number, marked.incoming.came_from));
    }
    return fmt::format("new, number {}", stored.number);
  }

  Store& store_;
  const ImportWishes& wishes_;
  const Progress& progress_;
  std::size_t total_;
  std::int64_t latest_s_;
  std::size_t done_ = 0;
  ImportSum sum_;
};

Made make(Incoming in, std::string wrong, bool known, Marker& marker, const ImportWishes& wishes) {
  Made made{in.came_from, known, std::move(wrong), {}, {}};
  if (known && !in.checks.empty()) {
    made.incoming = std::move(in);
  }
  if (!made.wrong.empty() || known) {
    return made;
  }
  in.label = in.label.empty() ? wishes.label : in.label;
  in.keep_until = in.keep_until.empty() ? wishes.keep_until : in.keep_until;
  auto marked = marker.mark(in);
  if (marked) {
    made.marked = std::move(*marked);
  } else {
    made.wrong = marked.error();
  }
  return made;
}

} // namespace

ImportSum import_folder(Store& store, Marker& marker, const std::filesystem::path& folder,
                        const ScenarioFolders& scenarios, const ImportWishes& wishes,
                        const Progress& progress) {
  std::vector<Refused> refused;
  const auto found = find_logs(folder, refused);
  const auto known = store.log_names();
  Import import(store, wishes, progress, found.size());
  in_order<Made>(
      found.size(), wishes.threads,
      [&](std::size_t i) {
        std::string wrong;
        Incoming in = read_found(found[i], scenarios, wrong);
        const bool stored = known.count({in.pseudonym, in.exercise, content_name(in.log_text)}) > 0;
        return make(std::move(in), stored ? "" : wrong, stored, marker, wishes);
      },
      [&](std::size_t, Made made) { import.take(std::move(made)); });
  ImportSum sum = std::move(import.sum());
  sum.refused.insert(sum.refused.begin(), refused.begin(), refused.end());
  return sum;
}

ImportSum import_all(Store& store, Marker& marker, const std::vector<Incoming>& sittings,
                     const ImportWishes& wishes, const Progress& progress) {
  const auto known = store.log_names();
  Import import(store, wishes, progress, sittings.size());
  in_order<Made>(
      sittings.size(), wishes.threads,
      [&](std::size_t i) {
        const Incoming& in = sittings[i];
        const bool stored = known.count({in.pseudonym, in.exercise, content_name(in.log_text)}) > 0;
        return make(in, "", stored, marker, wishes);
      },
      [&](std::size_t, Made made) { import.take(std::move(made)); });
  return std::move(import.sum());
}

} // namespace matula::records
