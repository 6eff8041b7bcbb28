package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import varanid.intake.assessment.ReadLook;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.LookComparison;
import varanid.intake.scoring.LookReading;

/** What was seen at the last look, what could not be seen, and what was looked for and is absent. */
@Component
class FindingsPart implements PartReader {

    private final LatestLook looks;
    private final Names names;
    private final HandOverTexts texts;

    FindingsPart(LatestLook looks, Names names, HandOverTexts texts) {
        this.looks = looks;
        this.names = names;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.FINDINGS;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<ReadLook> all = looks.list(visit);
        if (all.isEmpty()) {
            return List.of(Statement.of("no-look", Basis.RECORDED, texts.label("no-look"), texts.say("no-look"))
                    .weighing(Statement.Weight.STRONG));
        }
        ReadLook look = all.get(all.size() - 1);
        @Nullable String by = names.of(visit, look.observerId());
        LookShown shown = new LookShown(look, texts, by);
        List<Statement> said = new ArrayList<>(shown.signs());
        if (said.isEmpty()) {
            said.add(about(look, by, "no-sign", texts.label("why"), texts.say("nothing-counts")));
        }
        gap(look, by, said, "unseen-must-see", shown.unseenMustSee(), Statement.Weight.STRONG);
        before(all, look).ifPresent(earlier -> compare(earlier, look, said));
        mayBeExplained(look, said);
        gap(look, by, said, "unseen", shown.unseen(), Statement.Weight.SMALL);
        gap(look, by, said, "not-due", shown.notDue(), Statement.Weight.SMALL);
        absent(look, by, shown, said);
        return said;
    }

    private Statement about(ReadLook look, @Nullable String by, String code, String label, String text) {
        return Statement.of(code, Basis.OBSERVED, label, text)
                .at(look.kept().occurredAt())
                .by(by);
    }

    private void gap(
            ReadLook look,
            @Nullable String by,
            List<Statement> said,
            String code,
            List<LookReading.State> states,
            Statement.Weight weight) {
        if (!states.isEmpty()) {
            said.add(about(look, by, code, texts.label(code), LookShown.names(states))
                    .weighing(weight));
        }
    }

    /** By section, so that a reader finds the region of the body. */
    private void absent(ReadLook look, @Nullable String by, LookShown shown, List<Statement> said) {
        Map<String, List<LookReading.State>> bySection = shown.absent().stream()
                .collect(Collectors.groupingBy(state -> state.finding().section()));
        for (ChecklistDraft.Section section : look.edition().checklist().draft().sections()) {
            List<LookReading.State> states = bySection.getOrDefault(section.id(), List.of());
            if (!states.isEmpty()) {
                said.add(about(
                                look,
                                by,
                                "absent",
                                texts.label("absent"),
                                (section.title() == null ? section.id() : section.title()) + ": "
                                        + LookShown.names(states))
                        .weighing(Statement.Weight.SMALL));
            }
        }
    }

    private static Optional<ReadLook> before(List<ReadLook> all, ReadLook look) {
        Optional<ReadLook> before = Optional.empty();
        for (ReadLook each : all) {
            if (each == look) {
                break;
            }
            if (each.edition().id().equals(look.edition().id())) {
                before = Optional.of(each);
            }
        }
        return before;
    }

    private void compare(ReadLook earlier, ReadLook look, List<Statement> said) {
        List<LookComparison.Change> changes =
                LookComparison.of(earlier.reading(), look.reading()).changes();
        changed(
                look,
                earlier,
                said,
                "worse",
                changes.stream().filter(LookComparison.Change::isNewOrWorse).toList());
        changed(
                look,
                earlier,
                said,
                "lost",
                changes.stream().filter(LookComparison.Change::isLostSign).toList());
        changed(
                look,
                earlier,
                said,
                "better",
                changes.stream()
                        .filter(change -> change.kind() == LookComparison.Kind.BETTER
                                || change.kind() == LookComparison.Kind.GONE)
                        .toList());
    }

    private void changed(
            ReadLook look, ReadLook earlier, List<Statement> said, String code, List<LookComparison.Change> changes) {
        if (!changes.isEmpty()) {
            said.add(Statement.of(
                            code,
                            Basis.COMPUTED,
                            texts.label(code),
                            changes.stream()
                                    .map(change ->
                                            HandOverTexts.plain(change.finding().id()))
                                    .collect(Collectors.joining(", ")))
                    .at(earlier.kept().occurredAt())
                    .weighing(code.equals("better") ? Statement.Weight.PLAIN : Statement.Weight.STRONG));
        }
    }

    private void mayBeExplained(ReadLook look, List<Statement> said) {
        List<String> findings = new ArrayList<>();
        for (JsonNode less : look.document().path("lessCertain")) {
            findings.add(HandOverTexts.plain(
                    Objects.requireNonNull(less.path("finding").stringValue(""))));
        }
        if (!findings.isEmpty()) {
            said.add(Statement.of(
                            "surroundings-may-explain",
                            Basis.COMPUTED,
                            texts.label("surroundings-may-explain"),
                            String.join(", ", findings))
                    .at(look.kept().occurredAt()));
        }
    }
}
