package varanid.intake.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import varanid.intake.assessment.ReadLook;
import varanid.intake.platform.web.Markup;
import varanid.intake.scoring.LookReading;

/**
 * Which signs were seen at which look.
 *
 * @param looks the last ones, oldest first
 * @param earlier how many looks there were before those
 * @param signs one for each finding that was other than reassuring at one of these looks, in the order they are asked
 */
public record SignHistory(List<Look> looks, int earlier, List<Sign> signs) {

    public SignHistory {
        looks = List.copyOf(looks);
        signs = List.copyOf(signs);
    }

    /**
     * A look.
     *
     * @param headline how soon a vet, as it was worked out then, for people
     */
    public record Look(UUID id, Instant at, LocalDate on, String headline) {}

    /**
     * A finding over time.
     *
     * @param name in plain letters
     * @param cells one for each look
     */
    public record Sign(String name, List<Cell> cells) {
        public Sign {
            cells = List.copyOf(cells);
        }
    }

    /** How a finding was at a look. */
    public enum Mark {
        /** A sign that by itself asks for a vet. */
        SERIOUS,
        SIGN,
        /** Looked for, and as it should be. */
        WELL,
        /** Not seen, or hidden. */
        UNSEEN,
        /** The checklist of that look did not ask for it. */
        NOT_ASKED
    }

    /**
     * One finding at one look.
     *
     * @param word the level in a word or two; empty where it was no sign
     * @param text the level as the checklist says it; empty where it was no sign
     * @param doubt why it is not to be taken as it is
     */
    public record Cell(Mark mark, String word, String text, Optional<String> doubt) {
        private static Cell of(Mark mark) {
            return new Cell(mark, "", "", Optional.empty());
        }
    }

    static SignHistory of(List<ReadLook> all, int most, ZoneId zone, HandOverTexts texts) {
        List<ReadLook> shown = all.subList(Math.max(0, all.size() - most), all.size());
        Set<String> findings = new LinkedHashSet<>();
        // The order of the last checklist, which may know findings that an earlier one did not, and the other way
        // round.
        for (int i = shown.size() - 1; i >= 0; i--) {
            List<LookReading.State> states = shown.get(i).reading().states();
            states.stream()
                    .map(state -> state.finding().id())
                    .filter(finding -> isEverASign(shown, finding))
                    .forEach(findings::add);
        }
        List<Sign> signs = new ArrayList<>();
        for (String finding : findings) {
            signs.add(new Sign(
                    HandOverTexts.plain(finding),
                    shown.stream().map(look -> cell(look, finding, texts)).toList()));
        }
        return new SignHistory(
                shown.stream()
                        .map(look -> new Look(
                                look.kept().id(),
                                look.kept().occurredAt(),
                                LocalDate.ofInstant(look.kept().occurredAt(), zone),
                                texts.headline(look.kept().urgency())))
                        .toList(),
                all.size() - shown.size(),
                signs);
    }

    private static boolean isEverASign(List<ReadLook> looks, String finding) {
        return looks.stream()
                .anyMatch(look -> look.reading()
                        .find(finding)
                        .filter(LookReading.State::isSign)
                        .isPresent());
    }

    private static Cell cell(ReadLook look, String finding, HandOverTexts texts) {
        return look.reading()
                .find(finding)
                .map(state -> {
                    if (!state.isSign()) {
                        return Cell.of(state.isPlain() && state.level() != null ? Mark.WELL : Mark.UNSEEN);
                    }
                    Statement said = new LookShown(look, texts, null).sign(state);
                    return new Cell(
                            said.weight() == Statement.Weight.STRONG ? Mark.SERIOUS : Mark.SIGN,
                            HandOverTexts.plain(
                                    Objects.requireNonNull(state.level()).code()),
                            said.text(),
                            Optional.ofNullable(said.qualifier()).map(Markup::clean));
                })
                .orElseGet(() -> Cell.of(Mark.NOT_ASKED));
    }
}
