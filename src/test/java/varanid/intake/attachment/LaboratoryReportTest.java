package varanid.intake.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.slf4j.LoggerFactory;

class LaboratoryReportTest {

    /** As in the service: what is wrong with a file is told to whoever sent it. */
    @BeforeAll
    static void nothingIsLogged() {
        ((Logger) LoggerFactory.getLogger("org.apache.pdfbox")).setLevel(Level.OFF);
    }

    @Test
    void keepsAPlainReportAsItIs() throws Exception {
        byte[] sent = MadeReports.with(document -> {
            document.addPage(new PDPage());
            try (PDPageContentStream page = new PDPageContentStream(document, document.getPage(0))) {
                page.beginText();
                page.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 12);
                page.showText("Coccidia: few. JavaScript is not a parasite.");
                page.endText();
            }
            // A link to the laboratory waits for a person to follow it.
            PDAnnotationLink link = new PDAnnotationLink();
            PDActionURI address = new PDActionURI();
            address.setURI("https://laboratory.example/");
            link.setAction(address);
            document.getPage(0).getAnnotations().add(link);
        });
        LaboratoryReport report = LaboratoryReport.read(sent);
        assertThat(report.pdf()).isEqualTo(sent);
        assertThat(report.pages()).isEqualTo(2);
    }

    @Test
    void refusesAScript() {
        assertRefused(
                MadeReports.with(document ->
                        document.getDocumentCatalog().setOpenAction(new PDActionJavaScript("app.alert('x')"))),
                "has a script in it");
    }

    @ParameterizedTest
    @CsvSource({
        "JavaScript, has a script in it",
        "Launch, has an action that starts a program in it",
        "SubmitForm, has an action that sends something in it",
        "ImportData, has an action that fetches something in it",
        "GoToE, has a file within it in it",
        "GoToR, has an action that opens another file in it",
        "Rendition, has media that play in it",
    })
    void refusesWhatActsWhereverItStands(String kind, String wrong) {
        assertRefused(MadeReports.withAction(kind), wrong);
    }

    @Test
    void refusesAFileWithinIt() {
        assertRefused(MadeReports.with(LaboratoryReportTest::embed), "has a file within it in it");
    }

    @Test
    void refusesFormsThatRun() {
        assertRefused(
                MadeReports.withObject(object -> {
                    COSDictionary form = new COSDictionary();
                    form.setItem(COSName.XFA, new COSString("x"));
                    object.setItem(COSName.ACRO_FORM, form);
                    return object;
                }),
                "has a form that runs in it");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a word"})
    void refusesWhatIsEncryptedWithOrWithoutAPasswordToOpenIt(String password) {
        assertRefused(
                MadeReports.with(document -> document.protect(
                        new StandardProtectionPolicy("of the laboratory", password, new AccessPermission()))),
                "is encrypted");
    }

    @Test
    void refusesWhatIsCutOffOrNoPdf() {
        byte[] whole = MadeReports.plain();
        assertRefused(Arrays.copyOf(whole, whole.length / 3), "cannot be opened as a PDF");
        assertRefused("%PDF-1.7\nMZ".getBytes(StandardCharsets.US_ASCII), "cannot be opened as a PDF");
        assertRefused(
                "%PDF-<script>alert(1)</script>".getBytes(StandardCharsets.US_ASCII), "cannot be opened as a PDF");
    }

    @Test
    void findsANameThatIsSpeltInNumbers() {
        assertRefused(MadeReports.byHand("/Extra <</S /#4aavaScr#69pt>>", new byte[0]), "has a script in it");
    }

    @Test
    void findsWhatIsPackedAndPackedInLetters() throws Exception {
        byte[] hidden = MadeReports.deflated("7 0 <</S/JavaScript/JS(x)>>".getBytes(StandardCharsets.US_ASCII));
        assertRefused(MadeReports.byHand("/Filter/FlateDecode", hidden), "has a script in it");
        StringBuilder hexadecimal = new StringBuilder();
        for (byte each : hidden) {
            hexadecimal.append(String.format("%02X ", each));
        }
        assertRefused(
                MadeReports.byHand(
                        "/Filter[/ASCIIHexDecode/FlateDecode]",
                        hexadecimal.append('>').toString().getBytes(StandardCharsets.US_ASCII)),
                "has a script in it");
        assertThat(PackedStreams.look(
                        MadeReports.byHand(
                                "/Filter[/A85/Fl]",
                                base85(MadeReports.deflated("/Launch ".getBytes(StandardCharsets.US_ASCII)))),
                        Set.of("Launch")))
                .containsExactly("Launch");
    }

    @Test
    void readsAnOrdinaryStreamPackedInLetters() throws Exception {
        byte[] page = MadeReports.deflated("0 0 m 10 10 l S".getBytes(StandardCharsets.US_ASCII));
        assertThat(LaboratoryReport.read(MadeReports.byHand("/Filter[/ASCII85Decode/FlateDecode]", base85(page)))
                        .pages())
                .isEqualTo(1);
    }

    @Test
    void refusesWhatUnpacksToTooMuch() {
        byte[] bomb = MadeReports.zeros(PackedStreams.LARGEST_STREAM + (1L << 20));
        assertThat(bomb.length).isLessThan(200_000);
        assertRefused(
                MadeReports.byHand("/Filter/FlateDecode", bomb),
                "unpacks to more than " + PackedStreams.LARGEST_STREAM + " bytes");
        assertRefused(
                MadeReports.byHand("/Filter[/FlateDecode/FlateDecode]", MadeReports.deflated(bomb)),
                "is packed in an unusual way, so that what is in it cannot be checked");
        assertRefused(
                MadeReports.byHand("/Filter/LZWDecode", bomb),
                "is packed in an unusual way, so that what is in it cannot be checked");
        // The filter is named in an object of its own.
        assertRefused(
                MadeReports.byHand("/Filter 9 0 R", bomb),
                "unpacks to more than " + PackedStreams.LARGEST_STREAM + " bytes");
    }

    /** Whatever is wrong with it, it is kept or refused, and nothing else is thrown. */
    @Test
    void bearsEveryByteBeingWrong() {
        byte[] good = MadeReports.plain();
        for (int at = 0; at < good.length; at++) {
            byte[] bad = good.clone();
            bad[at] = (byte) (bad[at] ^ 0x15);
            try {
                assertThat(LaboratoryReport.read(bad).pages()).isPositive();
            } catch (Refused refused) {
                assertThat(refused.right()).isNotEmpty();
            }
        }
    }

    private static void assertRefused(byte[] pdf, String wrong) {
        assertThatThrownBy(() -> LaboratoryReport.read(pdf))
                .isInstanceOf(Refused.class)
                .hasMessage(wrong);
    }

    private static void embed(PDDocument document) throws IOException {
        PDComplexFileSpecification file = new PDComplexFileSpecification();
        file.setFile("results.exe");
        file.setEmbeddedFile(new PDEmbeddedFile(document, new ByteArrayInputStream(new byte[] {1, 2, 3})));
        PDEmbeddedFilesNameTreeNode files = new PDEmbeddedFilesNameTreeNode();
        files.setNames(Map.of("results", file));
        PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
        names.setEmbeddedFiles(files);
        document.getDocumentCatalog().setNames(names);
    }

    /** Adobe's base 85 (ISO 32000-1, 7.4.3), with PDFBox's own encoder. */
    private static byte[] base85(byte[] plain) throws IOException {
        try (PDDocument document = new PDDocument()) {
            COSStream stream = document.getDocument().createCOSStream();
            try (OutputStream out = stream.createOutputStream(COSName.ASCII85_DECODE)) {
                out.write(plain);
            }
            return stream.createRawInputStream().readAllBytes();
        }
    }
}
