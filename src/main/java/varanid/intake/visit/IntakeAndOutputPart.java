package varanid.intake.visit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.springframework.stereotype.Component;
import varanid.intake.diary.Ate;
import varanid.intake.diary.DiaryEntry;
import varanid.intake.diary.Noticed;
import varanid.intake.report.Standing;

/** Last meal, stool, urate and drink, from the diary. */
@Component
class IntakeAndOutputPart implements PartReader {

    private final Records records;
    private final Names names;
    private final HandOverTexts texts;

    IntakeAndOutputPart(Records records, Names names, HandOverTexts texts) {
        this.records = records;
        this.names = names;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.INTAKE_AND_OUTPUT;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<DiaryEntry> entries = records.diary(visit);
        List<Statement> said = new ArrayList<>();
        said.add(last(visit, entries, "last-meal", entry -> ate(entry, Ate.ALL, Ate.SOME), this::meal));
        findLast(entries, entry -> ate(entry, Ate.NONE))
                .ifPresent(entry -> said.add(statement(visit, "last-refusal", entry, meal(entry))));
        said.add(last(visit, entries, "last-stool", yes(DiaryEntry::stool), this::noticed));
        said.add(last(visit, entries, "last-urate", yes(DiaryEntry::urate), this::noticed));
        said.add(last(visit, entries, "last-drink", yes(DiaryEntry::drank), this::noticed));
        // What somebody told of it stands beside; then it is not the diary's silence that a vet has to read.
        Set<String> told = told(visit);
        said.removeIf(each -> each.basis() == Basis.RECORDED && told.contains(each.code()));
        return said;
    }

    private Set<String> told(Visit visit) {
        Standing standing = records.told(visit);
        Set<String> told = new HashSet<>();
        if (standing.lastMeal() != null) {
            told.add("last-meal");
        }
        if (standing.lastStool() != null) {
            told.add("last-stool");
        }
        if (standing.lastUrate() != null) {
            told.add("last-urate");
        }
        if (standing.lastDrink() != null) {
            told.add("last-drink");
        }
        return told;
    }

    private static boolean ate(DiaryEntry entry, Ate... which) {
        return entry.ate().filter(List.of(which)::contains).isPresent();
    }

    private static Predicate<DiaryEntry> yes(Function<DiaryEntry, Optional<Noticed>> what) {
        return entry -> what.apply(entry).filter(Noticed.YES::equals).isPresent();
    }

    private static Optional<DiaryEntry> findLast(List<DiaryEntry> entries, Predicate<DiaryEntry> which) {
        return entries.stream().filter(which).reduce((earlier, later) -> later);
    }

    private Statement last(
            Visit visit,
            List<DiaryEntry> entries,
            String code,
            Predicate<DiaryEntry> which,
            Function<DiaryEntry, String> words) {
        return findLast(entries, which)
                .map(entry -> statement(visit, code, entry, words.apply(entry)))
                .orElseGet(() -> Statement.of(code, Basis.RECORDED, texts.label(code), texts.say("not-recorded"))
                        .weighing(Statement.Weight.SMALL));
    }

    private Statement statement(Visit visit, String code, DiaryEntry entry, String words) {
        return Statement.of(code, Basis.OBSERVED, texts.label(code), words)
                .at(entry.occurredAt())
                .by(names.of(visit, entry.recordedBy()));
    }

    private String meal(DiaryEntry entry) {
        String how = texts.say("ate-" + entry.ate().orElseThrow().code());
        return entry.food().map(food -> food + ": " + how).orElse(how);
    }

    private String noticed(DiaryEntry entry) {
        return entry.note().orElse(texts.say("noticed"));
    }
}
