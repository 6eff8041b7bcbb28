package varanid.intake.visit;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import varanid.intake.animal.Animals;
import varanid.intake.assessment.ReadLook;

/** Which animal, and why it is shown now. */
@Component
class WhoAndWhyPart implements PartReader {

    private static final int MOST_REASONS = 4;

    private final LatestLook looks;
    private final Records records;
    private final Names names;
    private final HandOverTexts texts;

    WhoAndWhyPart(LatestLook looks, Records records, Names names, HandOverTexts texts) {
        this.looks = looks;
        this.records = records;
        this.names = names;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.WHO_AND_WHY;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<Statement> said = new ArrayList<>();
        Optional<ReadLook> look = looks.find(visit);
        look.ifPresentOrElse(
                it -> ofLook(visit, it, said),
                () -> said.add(Statement.of("no-look", Basis.RECORDED, texts.label("no-look"), texts.say("no-look"))
                        .weighing(Statement.Weight.STRONG)));
        Optional<LocalDate> arrived = visit.animal().arrivedOn();
        said.add(Statement.of(
                        "arrived",
                        Basis.RECORDED,
                        texts.label("arrived"),
                        arrived.map(day -> ago(visit, day)).orElse(texts.say("arrival-unknown")))
                .on(arrived.orElse(null)));
        Animals.Profile profile = records.profile(visit);
        profile.notes()
                .ifPresent(words -> said.add(Statement.of("notes", Basis.REPORTED, texts.label("notes"), words)
                        .at(visit.animal().recordedAt())
                        .by(names.of(visit, profile.recordedBy()))));
        return said;
    }

    private void ofLook(Visit visit, ReadLook look, List<Statement> said) {
        int before = said.size();
        for (JsonNode reason : look.document().path("reasons")) {
            if (said.size() - before < MOST_REASONS
                    && reason.path("urgency").stringValue("").equals(look.kept().urgency())
                    && reason.path("counted").booleanValue(true)) {
                said.add(Statement.of("why", Basis.COMPUTED, texts.label("why"), LookShown.reasonText(reason, texts))
                        .weighing(Statement.Weight.STRONG));
            }
        }
        if (said.size() == before) {
            said.add(Statement.of("why", Basis.COMPUTED, texts.label("why"), texts.say("nothing-counts")));
        }
        LookShown shown = new LookShown(look, texts, null);
        String conditions = shown.conditions();
        said.add(Statement.of(
                        "looked",
                        Basis.RECORDED,
                        texts.label("looked"),
                        ago(visit, look.kept().localDate()))
                .at(look.kept().occurredAt())
                .by(names.of(visit, look.observerId()))
                .qualified(conditions.isEmpty() ? texts.say("plain-look") : conditions));
        JsonNode note = look.document().path("note");
        if (note.isString()) {
            said.add(Statement.of("look-note", Basis.REPORTED, texts.label("notes"), note.stringValue())
                    .at(look.kept().occurredAt())
                    .by(names.of(visit, look.observerId())));
        }
    }

    private String ago(Visit visit, LocalDate day) {
        long days = ChronoUnit.DAYS.between(day, visit.today());
        return days == 0
                ? texts.say("days-ago-0")
                : days == 1 ? texts.say("days-ago-1") : texts.say("days-ago", "days", Long.toString(days));
    }
}
