package varanid.intake.visit;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import varanid.intake.assessment.ReadLook;
import varanid.intake.diary.Cleaning;
import varanid.intake.diary.DiaryEntry;
import varanid.intake.diary.MiteCheck;

/** Earlier looks, the diary of the last days, and every weighing: newest first. */
@Component
class HistoryPart implements PartReader {

    private final LatestLook looks;
    private final Records records;
    private final Names names;
    private final HandOverTexts texts;

    HistoryPart(LatestLook looks, Records records, Names names, HandOverTexts texts) {
        this.looks = looks;
        this.records = records;
        this.names = names;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.HISTORY;
    }

    @Override
    public List<Statement> read(Visit visit) {
        List<Statement> said = new ArrayList<>();
        List<ReadLook> all = looks.list(visit);
        for (int i = all.size() - 2; i >= 0; i--) {
            said.add(look(visit, all.get(i)));
        }
        List<DiaryEntry> entries = records.diary(visit);
        for (int i = entries.size() - 1; i >= 0; i--) {
            DiaryEntry entry = entries.get(i);
            if (!entry.localDate().isBefore(visit.today().minusDays(texts.daysOfDiary()))) {
                said.add(entry(visit, entry));
            }
        }
        records.weights(visit).ifPresent(words -> {
            for (int i = words.weighings().size() - 1; i >= 0; i--) {
                said.add(WeightPart.weighing(words.weighings().get(i), "weighing", texts));
            }
        });
        return said;
    }

    Statement look(Visit visit, ReadLook look) {
        LookShown shown = new LookShown(look, texts, null);
        String signs = LookShown.names(look.reading().signs());
        return Statement.of(
                        "earlier-look",
                        Basis.OBSERVED,
                        texts.label("earlier-look"),
                        texts.headline(look.kept().urgency()) + (signs.isEmpty() ? "" : ": " + signs))
                .at(look.kept().occurredAt())
                .by(names.of(visit, look.observerId()))
                .qualified(shown.conditions().isEmpty() ? null : shown.conditions());
    }

    Statement entry(Visit visit, DiaryEntry entry) {
        List<String> parts = new ArrayList<>();
        entry.ate()
                .map(ate -> texts.word("diary-ate", ate.code()))
                .ifPresent(how ->
                        parts.add(entry.food().map(food -> food + ": " + how).orElse(how)));
        entry.drank().ifPresent(it -> parts.add(texts.word("diary-drank", it.code())));
        entry.stool().ifPresent(it -> parts.add(texts.word("diary-stool", it.code())));
        entry.urate().ifPresent(it -> parts.add(texts.word("diary-urate", it.code())));
        entry.seen().ifPresent(it -> parts.add(texts.word("diary-seen", it.code())));
        entry.demeanour().ifPresent(it -> parts.add(texts.word("diary-demeanour", it.code())));
        if (entry.cleaning() != Cleaning.NONE) {
            parts.add(texts.word("diary-cleaning", entry.cleaning().code()));
        }
        if (entry.miteCheck() != MiteCheck.NOT_LOOKED) {
            parts.add(texts.word("diary-mites", entry.miteCheck().code()));
        }
        String plain = String.join(", ", parts);
        return Statement.of(
                        "diary",
                        Basis.OBSERVED,
                        texts.label("diary"),
                        entry.note()
                                .map(note -> plain.isEmpty() ? note : plain + ". " + note)
                                .orElse(plain))
                .at(entry.occurredAt())
                .by(names.of(visit, entry.recordedBy()))
                .weighing(Statement.Weight.SMALL);
    }
}
