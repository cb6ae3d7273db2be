#include "engine/classroom/sealed_run.hpp"

#include "engine/records/trouble.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::classroom {
namespace {

namespace fs = std::filesystem;
using examination::OpenedReturns;

std::string problem_words(const scenario::Problem& problem) {
  return fmt::format("{}: {}. It should be: {}", fs::path(problem.file).filename().string(), problem.found,
                     problem.expected);
}

OpenedReturns open(const SealedOrder& order, seal::Secret passphrase, Work& work) {
  work.begin("results opened");
  auto held = std::make_shared<seal::Secret>(std::move(passphrase));
  auto opened = examination::open_returned(
      order.files,
      [&held]() -> seal::Maybe<seal::Secret> {
        seal::Secret words = std::move(*held);
        held.reset();
        return words;
      },
      [&](std::size_t done, std::size_t total) { work.step(done, total, ""); });
  if (!opened) {
    std::string words;
    for (const auto& problem : opened.error()) {
      words += (words.empty() ? "" : "\n") + problem_words(problem);
    }
    throw records::Trouble(words);
  }
  return std::move(*opened);
}

SealedSitting told(const examination::Returned& returned) {
  SealedSitting one;
  one.file = fs::path(returned.file).filename().string();
  one.pseudonym = returned.pseudonym;
  one.label = returned.label;
  one.case_key = returned.case_key;
  one.to_be_reviewed = returned.to_be_reviewed();
  one.checks = examination::words_of(returned.checks);
  one.kept = returned.scenario_text.empty() ? "not taken: the pack has no such case for this learner"
                                            : "not reached";
  return one;
}

void keep(const std::string& address, const AskMarker& marker, const SealedOrder& order,
          const OpenedReturns& opened, SealedEnd& end, Work& work) {
  const std::string& last_day = opened.pack.head.delete_after;
  std::vector<records::Incoming> incoming;
  std::vector<std::size_t> rows; ///< Of the table, by place in `incoming`.
  for (const auto& returned : opened.found.sittings) {
    if (auto in = incoming_of(returned, order.label, last_day)) {
      rows.push_back(end.sittings.size());
      incoming.push_back(std::move(*in));
    }
    end.sittings.push_back(told(returned));
  }
  work.begin("sittings taken in");
  records::Store store(address);
  const records::ImportWishes wishes{order.label, last_day, order.threads, order.now_s};
  end.sum = records::import_all(store, marker(), incoming, wishes, [&](const records::Step& step) {
    auto& row = end.sittings[rows[step.done - 1]];
    row.kept = step.words;
    row.number = step.number;
    work.step(step.done, step.total, row.file + ": " + step.words);
  });
}

} // namespace

std::optional<records::Incoming> incoming_of(const examination::Returned& returned, const std::string& label,
                                             const std::string& keep_until) {
  if (returned.scenario_text.empty()) {
    return std::nullopt;
  }
  return records::Incoming{returned.pseudonym,
                           returned.case_key,
                           returned.scenario_text,
                           returned.case_key + ".toml",
                           returned.log,
                           examination::kept_checks(returned),
                           label,
                           keep_until,
                           returned.file};
}

SealedEnd take_sealed(const std::string& address, const AskMarker& marker, const SealedOrder& order,
                      seal::Secret passphrase, Work& work) {
  SealedEnd end;
  static_cast<WorkEnd&>(end) = work.run([&] {
    const OpenedReturns opened = open(order, std::move(passphrase), work);
    end.examination = opened.pack.head.title;
    end.rules_changed = opened.rules_changed(order.assets_folder);
    for (const auto& problem : opened.found.unreadable) {
      end.unreadable.push_back(problem_words(problem));
    }
    end.outstanding = opened.found.outstanding;
    keep(address, marker, order, opened, end, work);
  });
  return end;
}

std::string SealedEnd::words() const {
  if (!trouble.empty()) {
    return trouble;
  }
  if (stopped) {
    return fmt::format("Stopped after {} of {}. What was taken in stays; take the same results in again and "
                       "the rest follows.",
                       done, total);
  }
  const auto review = std::count_if(sittings.begin(), sittings.end(),
                                    [](const SealedSitting& one) { return one.to_be_reviewed; });
  return fmt::format("{}: {} results opened, {} of them to be reviewed, {} files that could not be opened. "
                     "{} new, {} known already, {} not taken.",
                     examination, sittings.size(), review, unreadable.size(), sum->fresh, sum->known,
                     sum->refused.size());
}

} // namespace matula::classroom
