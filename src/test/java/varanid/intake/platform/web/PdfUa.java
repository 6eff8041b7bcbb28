package varanid.intake.platform.web;

import java.io.ByteArrayInputStream;
import java.util.List;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** What veraPDF says of a PDF by the rules of PDF/UA-1 (ISO 14289-1). */
public final class PdfUa {

    private PdfUa() {}

    /** Nothing where the validator finds no fault; of each rule that is broken, its clause, text and place. */
    public static List<String> faults(byte[] pdf) {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            ValidationResult result = validator.validate(parser);
            return result.getTestAssertions().stream()
                    .filter(assertion -> assertion.getStatus() == TestAssertion.Status.FAILED)
                    .map(assertion -> assertion.getRuleId().getClause() + "-"
                            + assertion.getRuleId().getTestNumber() + " " + assertion.getMessage() + " at "
                            + assertion.getLocation().getContext())
                    .toList();
        } catch (Exception e) {
            throw new IllegalStateException("the validator could not read it", e);
        }
    }
}
