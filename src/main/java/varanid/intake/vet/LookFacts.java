package varanid.intake.vet;

import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import java.util.UUID;
import varanid.intake.assessment.KeptLook;
import varanid.intake.assessment.ReadLook;
import varanid.intake.scoring.LookReading;

/**
 * What of a look is weighed against a vet's answer.
 *
 * @param supersedes the look that this one corrects
 * @param label the urgency, for people
 * @param headline what was recommended, for people
 * @param onlyUnseen whether it is as urgent as it is only because something was not seen
 */
record LookFacts(
        KeptLook kept,
        Optional<UUID> supersedes,
        String label,
        String headline,
        boolean onlyUnseen,
        LookReading reading) {

    /** The one that occurred first comes first; of several at one moment the one recorded first. */
    static final Comparator<LookFacts> IN_ORDER =
            Comparator.comparing((LookFacts look) -> look.kept().occurredAt()).thenComparing(LookFacts::id);

    static LookFacts of(ReadLook look) {
        return new LookFacts(
                look.kept(),
                look.supersedes(),
                look.urgencyLabel(),
                look.headline(),
                look.isUrgentOnlyByUnseen(),
                look.reading());
    }

    UUID id() {
        return kept.id();
    }

    String urgency() {
        return kept.urgency();
    }

    boolean isStrict() {
        return kept.isolation().filter(AnswerRules.STRICT::equals).isPresent();
    }

    String checklist() {
        return reading.checklist().draft().id();
    }

    /** Whether it was there to be read at that moment. */
    boolean wasRecordedBy(Instant moment) {
        return !kept.recordedAt().isAfter(moment);
    }
}
