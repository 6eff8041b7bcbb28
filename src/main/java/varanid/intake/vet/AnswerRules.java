package varanid.intake.vet;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import varanid.intake.assessment.KeptLook;
import varanid.intake.vet.Recommendation.By;
import varanid.intake.vet.Recommendation.NewSince;

/**
 * What holds, worked out from all looks at an animal and all that vets answered. Pure: the same looks and answers give
 * the same, in whatever order they were recorded.
 */
final class AnswerRules {

    static final String STANDARD = "standard";
    static final String STRICT = "strict";

    private AnswerRules() {}

    /**
     * What holds, before it is put in words.
     *
     * @param computed the last look that stands
     * @param vetSaidHowSoon whether a confirmed answer says how soon, whatever came after
     * @param raisedBy the unconfirmed answer that the urgency is of, where one raises it
     * @param urgencyAnswer the confirmed answer that the urgency is of, where it is of one
     */
    record Outcome(
            Optional<LookFacts> computed,
            Optional<VetAnswer> standing,
            List<VetAnswer> unconfirmed,
            Optional<String> urgency,
            By by,
            boolean vetSaidHowSoon,
            Optional<VetAnswer> urgencyAnswer,
            Optional<VetAnswer> raisedBy,
            String isolation,
            By isolationBy,
            Set<String> routes,
            List<NewSince> newSince) {}

    /**
     * @param looks every look there ever was, also those that were superseded
     * @param answers those given up to that day, confirmed where they were by then
     */
    static Outcome decide(List<LookFacts> looks, List<VetAnswer> answers, LocalDate asOf) {
        return new Case(looks, answers, asOf).decide();
    }

    private static final class Case {

        private final List<LookFacts> ever;
        private final List<LookFacts> standingLooks;
        private final List<VetAnswer> confirmed;
        private final List<VetAnswer> unconfirmed;

        Case(List<LookFacts> looks, List<VetAnswer> answers, LocalDate asOf) {
            ever = looks.stream().sorted(LookFacts.IN_ORDER).toList();
            standingLooks = withoutSuperseded(ever).stream()
                    .filter(look -> !look.kept().localDate().isAfter(asOf))
                    .toList();
            Set<UUID> replaced = answers.stream()
                    .filter(VetAnswer::confirmed)
                    .flatMap(answer -> answer.supersedes().stream())
                    .collect(Collectors.toSet());
            confirmed = answers.stream()
                    .filter(answer -> answer.confirmed() && !replaced.contains(answer.id()))
                    .sorted(VetAnswer.IN_ORDER)
                    .toList();
            Optional<VetAnswer> standing = last(confirmed);
            unconfirmed = answers.stream()
                    .filter(answer -> !answer.confirmed() && !replaced.contains(answer.id()))
                    .filter(answer -> standing.isEmpty() || VetAnswer.IN_ORDER.compare(answer, standing.get()) > 0)
                    .sorted(VetAnswer.IN_ORDER)
                    .toList();
        }

        Outcome decide() {
            Optional<LookFacts> computed = last(standingLooks);
            Optional<VetAnswer> standing = last(confirmed);
            List<NewSince> newSince =
                    standing.map(answer -> cannotWait(unseenBy(answer))).orElse(List.of());

            Optional<VetAnswer> saidHowSoon =
                    last(confirmed.stream().filter(answer -> answer.urgency().isPresent()));
            Optional<String> said = saidHowSoon.flatMap(VetAnswer::urgency);
            Optional<String> raised = Urgency.max(Stream.concat(
                    newSince.stream().map(NewSince::floor),
                    saidHowSoon.map(this::unseenBy).stream()
                            .flatMap(news -> Stream.concat(
                                    cannotWait(news).stream().map(NewSince::floor),
                                    last(news)
                                            .filter(WhatIsNew::adds)
                                            .map(it -> it.look().urgency())
                                            .stream()))));
            Optional<String> worked = said.isPresent()
                    ? raised
                    : Urgency.max(Stream.concat(computed.map(LookFacts::urgency).stream(), raised.stream()));
            Optional<VetAnswer> loudest = unconfirmed.stream()
                    .filter(answer -> answer.urgency().isPresent())
                    .max(Comparator.comparingInt(
                            answer -> Urgency.rank(answer.urgency().get())));
            Optional<String> urgency = Urgency.max(
                    Stream.of(said, worked, loudest.flatMap(VetAnswer::urgency)).flatMap(Optional::stream));
            boolean byVet = said.isPresent() && said.equals(urgency);
            boolean byComputed = !byVet && worked.equals(urgency);
            boolean byUnconfirmed = !byVet && !byComputed && urgency.isPresent();

            Apart apart = apart(computed, standing);
            return new Outcome(
                    computed,
                    standing,
                    unconfirmed,
                    urgency,
                    byVet || byUnconfirmed ? By.VET : By.COMPUTED,
                    said.isPresent(),
                    byVet ? saidHowSoon : Optional.empty(),
                    byUnconfirmed ? loudest : Optional.empty(),
                    apart.isolation(),
                    apart.by(),
                    apart.routes(),
                    newSince);
        }

        private record Apart(String isolation, By by, Set<String> routes) {}

        private Apart apart(Optional<LookFacts> computed, Optional<VetAnswer> standing) {
            Optional<VetAnswer> saidHowApart =
                    last(confirmed.stream().filter(answer -> answer.isolation().isPresent()));
            Optional<String> said = saidHowApart.flatMap(VetAnswer::isolation);
            Set<String> routes = new HashSet<>();
            boolean lookIsStrict;
            if (saidHowApart.isPresent()) {
                List<WhatIsNew> news = unseenBy(saidHowApart.get());
                routes.addAll(strictRoutes(news));
                lookIsStrict = !routes.isEmpty()
                        || last(news)
                                .filter(it -> it.adds() && it.look().isStrict())
                                .isPresent();
            } else {
                standing.map(this::unseenBy).ifPresent(news -> routes.addAll(strictRoutes(news)));
                lookIsStrict = !routes.isEmpty()
                        || computed.filter(LookFacts::isStrict).isPresent();
            }
            boolean vetIsStrict = said.filter(STRICT::equals).isPresent();
            boolean unconfirmedIsStrict = unconfirmed.stream()
                    .anyMatch(
                            answer -> answer.isolation().filter(STRICT::equals).isPresent());
            if (!vetIsStrict && !lookIsStrict && !unconfirmedIsStrict) {
                return new Apart(STANDARD, said.isPresent() ? By.VET : By.COMPUTED, Set.of());
            }
            computed.filter(LookFacts::isStrict)
                    .ifPresent(look -> routes.addAll(look.kept().isolationRoutes()));
            By by = vetIsStrict || !lookIsStrict ? By.VET : By.COMPUTED;
            return new Apart(STRICT, by, routes);
        }

        private static Set<String> strictRoutes(List<WhatIsNew> news) {
            return news.stream()
                    .flatMap(it -> it.signs().stream())
                    .flatMap(sign -> sign.strictRoutes().stream())
                    .collect(Collectors.toSet());
        }

        /** Of each look that stands and that the writer could not have seen, what is new in it; in the order of looks. */
        private List<WhatIsNew> unseenBy(VetAnswer answer) {
            // As they were then: what was corrected later was still to be read.
            List<LookFacts> seen = withoutSuperseded(ever.stream()
                    .filter(look -> look.wasRecordedBy(answer.seenUpTo()))
                    .toList());
            return standingLooks.stream()
                    .filter(look -> !look.wasRecordedBy(answer.seenUpTo()))
                    .map(look -> WhatIsNew.in(
                            look,
                            last(seen.stream()
                                    .filter(before -> before.checklist().equals(look.checklist()))),
                            answer))
                    .toList();
        }

        /** What may not wait longer than a day, of each finding the worst, the most urgent first. */
        private static List<NewSince> cannotWait(List<WhatIsNew> news) {
            Map<String, NewSince> worst = new LinkedHashMap<>();
            for (WhatIsNew it : news) {
                for (KeptLook.Sign sign : it.signs()) {
                    sign.floor()
                            .filter(Urgency::isSoon)
                            .map(floor -> one(news, it, sign.finding(), sign.level(), sign.told(), floor))
                            .ifPresent(next ->
                                    worst.merge(next.finding(), next, (one, other) -> worse(it, sign, one, other)));
                }
                String urgency = it.look().urgency();
                boolean accountedFor = it.signs().stream()
                        .flatMap(sign -> sign.floor().stream())
                        .anyMatch(floor -> Urgency.rank(floor) >= Urgency.rank(urgency));
                if (it.moreUrgent() && Urgency.isSoon(urgency) && !accountedFor) {
                    NewSince whole = one(
                            news, it, NewSince.WHOLE_LOOK, urgency, it.look().label(), urgency);
                    worst.merge(
                            NewSince.WHOLE_LOOK,
                            whole,
                            (one, other) -> Urgency.rank(other.floor()) > Urgency.rank(one.floor()) ? other : one);
                }
            }
            List<NewSince> all = new ArrayList<>(worst.values());
            // A stable sort: what was seen first stays first among equals.
            all.sort(Comparator.comparingInt((NewSince it) -> -Urgency.rank(it.floor())));
            return all;
        }

        private static NewSince worse(WhatIsNew news, KeptLook.Sign sign, NewSince one, NewSince other) {
            int byFloor = Urgency.rank(other.floor()) - Urgency.rank(one.floor());
            boolean further = !WhatIsNew.isNoWorse(news.findingOf(sign), other.level(), one.level());
            return byFloor > 0 || byFloor == 0 && further ? other : one;
        }

        private static NewSince one(
                List<WhatIsNew> news, WhatIsNew it, String finding, String level, String label, String floor) {
            LookFacts latest = news.get(news.size() - 1).look();
            boolean stillThere = finding.equals(NewSince.WHOLE_LOOK)
                    ? Urgency.rank(latest.urgency()) >= Urgency.rank(floor)
                    : latest.kept().findSign(finding).isPresent();
            return new NewSince(
                    finding,
                    level,
                    label,
                    floor,
                    it.look().id(),
                    it.look().kept().occurredAt(),
                    stillThere ? Optional.empty() : Optional.of(latest.kept().occurredAt()));
        }

        private static List<LookFacts> withoutSuperseded(List<LookFacts> looks) {
            Set<UUID> superseded =
                    looks.stream().flatMap(look -> look.supersedes().stream()).collect(Collectors.toSet());
            return looks.stream()
                    .filter(look -> !superseded.contains(look.id()))
                    .toList();
        }
    }

    private static <T> Optional<T> last(List<T> all) {
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    private static <T> Optional<T> last(Stream<T> all) {
        return last(all.toList());
    }
}
