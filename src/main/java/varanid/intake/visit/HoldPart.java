package varanid.intake.visit;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import varanid.intake.quarantine.FollowUps;

/** Whether an authority holds it. */
@Component
@Order(20)
class HoldPart implements PartReader {

    private final FollowUps followUps;
    private final HandOverTexts texts;

    HoldPart(FollowUps followUps, HandOverTexts texts) {
        this.followUps = followUps;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.CONSENT_AND_CONTACT;
    }

    @Override
    public List<Statement> read(Visit visit) {
        Optional<FollowUps.Hold> hold = followUps.findHold(visit.organisationId(), visit.animalId(), visit.today());
        return List.of(hold.map(this::said)
                .orElseGet(() -> Statement.of("hold", Basis.RECORDED, texts.label("hold"), texts.say("hold-unknown"))
                        .weighing(Statement.Weight.SMALL)));
    }

    private Statement said(FollowUps.Hold hold) {
        String text = switch (hold.state()) {
            case "held" ->
                hold.authority().map(who -> texts.say("held", "authority", who)).orElse(texts.say("held-plain"));
            case "released" -> texts.say("released");
            default -> texts.say("no-hold");
        };
        String about = Stream.of(hold.reference(), hold.note())
                .flatMap(Optional::stream)
                .collect(Collectors.joining("; "));
        return Statement.of("hold", Basis.RECORDED, texts.label("hold"), text)
                .on(hold.on())
                .qualified(about.isEmpty() ? null : about)
                .weighing(hold.state().equals("held") ? Statement.Weight.STRONG : Statement.Weight.PLAIN);
    }
}
