package varanid.intake.visit;

import java.util.List;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import varanid.intake.account.OwnOrganisation;

/** Who keeps it, and how they are called. */
@Component
@Order(30)
class HousePart implements PartReader {

    private final OwnOrganisation house;
    private final HandOverTexts texts;

    HousePart(OwnOrganisation house, HandOverTexts texts) {
        this.house = house;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.CONSENT_AND_CONTACT;
    }

    @Override
    public List<Statement> read(Visit visit) {
        return house.find(visit.organisationId()).stream()
                .map(known -> Statement.of(
                        "house",
                        Basis.RECORDED,
                        texts.label("house"),
                        known.toCall().orElse(known.name())))
                .toList();
    }
}
