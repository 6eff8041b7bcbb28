package varanid.intake.assessment;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import varanid.intake.checklist.Catalogue;
import varanid.intake.checklist.Edition;
import varanid.intake.scoring.Answer;
import varanid.intake.scoring.ChecklistDraft;
import varanid.intake.scoring.Look;
import varanid.intake.scoring.LookComparison;
import varanid.intake.scoring.LookReading;

/** Reads kept looks back from their documents: as they were scored then, by the version they were scored by. */
@Component
class StoredLooks {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private final Catalogue catalogue;

    StoredLooks(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    /** A look read back: its document, its checklist, and what its answers stand for. */
    record StoredLook(AssessmentRow row, Edition edition, JsonNode document, LookReading reading) {}

    StoredLook read(AssessmentRow row) {
        Edition edition = catalogue
                .find(row.checklistId(), row.checklistVersion())
                .orElseThrow(() -> new IllegalStateException("assessment " + row.id() + " was made by "
                        + row.checklistId() + " version " + row.checklistVersion() + ", which this build lacks"));
        JsonNode document = MAPPER.readTree(row.document().text());
        return new StoredLook(
                row, edition, document, edition.scorer().read(look(document, edition, Set.copyOf(row.excused()))));
    }

    /** The ids of the findings that it was asked about. */
    Set<String> findings(AssessmentRow row) {
        return read(row).edition().checklist().draft().findings().stream()
                .map(ChecklistDraft.Finding::id)
                .collect(Collectors.toSet());
    }

    KeptLook kept(AssessmentRow row) {
        return kept(read(row));
    }

    ReadLook readLook(AssessmentRow row) {
        StoredLook look = read(row);
        return new ReadLook(
                kept(look), row.observerId(), look.edition(), look.document(), look.reading(), row.formKey());
    }

    private static KeptLook kept(StoredLook look) {
        AssessmentRow row = look.row();
        return new KeptLook(
                row.id(),
                row.animalId(),
                row.occurredAt(),
                row.recordedAt(),
                row.localDate(),
                row.urgency(),
                Optional.ofNullable(row.isolation()),
                texts(look.document().at("/isolation/routes")).collect(Collectors.toSet()),
                row.settled(),
                look.reading().signs().stream().map(StoredLooks::sign).toList(),
                look.reading().unseenMustSee().stream()
                        .map(state -> questionOf(state.finding()))
                        .toList(),
                look.reading().states().stream()
                        .filter(LookReading.State::isPlain)
                        .map(state -> state.finding().id())
                        .collect(Collectors.toSet()));
    }

    LastLook last(AssessmentRow row, Optional<AssessmentRow> before) {
        StoredLook look = read(row);
        JsonNode urgency = look.document().path("urgency");
        List<LastLook.Named> because = new ArrayList<>();
        look.document().path("reasons").forEach(reason -> {
            if (reason.path("urgency").stringValue("").equals(row.urgency())) {
                because.add(named(reason));
            }
        });
        return new LastLook(
                row.id(),
                row.occurredAt(),
                row.urgency(),
                urgency.path("headline").stringValue(urgency.path("label").stringValue(row.urgency())),
                before.map(AssessmentRow::id),
                before.map(earlier -> LookComparison.of(read(earlier).reading(), look.reading()))
                        .map(StoredLooks::newOrWorse)
                        .orElse(List.of()),
                because);
    }

    private static LastLook.Named named(JsonNode reason) {
        String kind = reason.path("kind").stringValue("");
        String id = reason.path("id").stringValue(kind);
        String text = reason.path("text").stringValue("");
        return switch (kind) {
            case "level", "excused" -> new LastLook.Named(id, SignWords.tell(id, text), false);
            default -> new LastLook.Named(id, text, kind.equals("section") || kind.equals("total"));
        };
    }

    /** What is a sign and was unknown before is among them: nobody can say that it was there. */
    private static List<LastLook.Named> newOrWorse(LookComparison comparison) {
        List<LastLook.Named> named = new ArrayList<>();
        for (LookComparison.Change change : comparison.changes()) {
            LookReading.State after = change.after();
            if (change.isNewOrWorse() && after != null && after.level() != null) {
                named.add(new LastLook.Named(
                        change.finding().id(), SignWords.tell(change.finding(), after.level()), false));
            }
        }
        return named;
    }

    /** What a finding asks, in the checklist's words. */
    static String questionOf(ChecklistDraft.Finding finding) {
        return finding.question() == null ? finding.id() : finding.question();
    }

    private static KeptLook.Sign sign(LookReading.State state) {
        ChecklistDraft.Level level = state.level();
        if (level == null) {
            throw new IllegalArgumentException(state.finding().id() + " was not seen");
        }
        return new KeptLook.Sign(
                state.finding().id(),
                level.code(),
                SignWords.label(level),
                level.points(),
                Optional.ofNullable(level.floor()),
                level.isolate() == null ? Set.of() : Set.of(level.isolate()));
    }

    /**
     * The look that was scored then.
     *
     * @param excused the findings that a condition excused: the day's excuse was used up for all others
     */
    private static Look look(JsonNode document, Edition edition, Set<String> excused) {
        Map<String, Answer> answers = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> answer : document.path("answers").properties()) {
            ChecklistDraft.Finding finding =
                    edition.checklist().findFinding(answer.getKey()).orElseThrow();
            answers.put(answer.getKey(), AnswerJson.readKept(answer.getValue(), finding));
        }
        Map<String, String> attributes = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> attribute : document.path("animal").properties()) {
            attributes.put(attribute.getKey(), attribute.getValue().stringValue());
        }
        Set<String> conditions =
                texts(document.path("conditions")).collect(Collectors.toCollection(LinkedHashSet::new));
        Set<String> usedUp = new HashSet<>(answers.keySet());
        usedUp.removeAll(excused);
        return new Look(answers, attributes, conditions, usedUp);
    }

    private static Stream<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(item -> texts.add(item.stringValue()));
        return texts.stream();
    }
}
