package varanid.intake.platform.web;

import com.openhtmltopdf.bidi.support.ICUBidiReorderer;
import com.openhtmltopdf.bidi.support.ICUBidiSplitter;
import com.openhtmltopdf.bidi.support.ICUBreakers;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.springframework.stereotype.Component;

/**
 * Writes a page as PDF: tagged, with its language and title, fonts embedded. It fetches nothing: what the page does not
 * hold is not shown.
 */
@Component
public class PdfWriter {

    private static final String FAMILY = "DejaVu Sans";

    /**
     * The page as PDF.
     *
     * @param xhtml well-formed, with a language and a title; {@code <style id="style"></style>} in its head is filled
     * @param style the style sheet, a static resource such as {@code /paper/summary-print.css}
     */
    public byte[] write(String xhtml, String style) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePdfUaAccessibility(true);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, uri) -> null);
        builder.useUnicodeBidiSplitter(new ICUBidiSplitter.ICUBidiSplitterFactory());
        builder.useUnicodeBidiReorderer(new ICUBidiReorderer());
        builder.useUnicodeLineBreaker(new ICUBreakers.ICULineBreaker(Locale.ENGLISH));
        builder.useUnicodeCharacterBreaker(new ICUBreakers.ICUCharacterBreaker(Locale.ENGLISH));
        builder.useFont(
                () -> resource("/fonts/DejaVuSans.ttf"), FAMILY, 400, BaseRendererBuilder.FontStyle.NORMAL, true);
        builder.useFont(
                () -> resource("/fonts/DejaVuSans-Bold.ttf"), FAMILY, 700, BaseRendererBuilder.FontStyle.NORMAL, true);
        builder.useReplacementText("\uFFFD");
        builder.withProducer("Varanid Intake");
        try (InputStream css = resource("/static" + style)) {
            String sheet = new String(css.readAllBytes(), StandardCharsets.UTF_8);
            builder.withHtmlContent(
                    xhtml.replace("<style id=\"style\"></style>", "<style>" + sheet + "</style>"), null);
        }
        builder.toStream(out);
        builder.run();
        return out.toByteArray();
    }

    private static InputStream resource(String path) {
        InputStream in = PdfWriter.class.getResourceAsStream(path);
        if (in == null) {
            throw new IllegalStateException("missing from the program: " + path);
        }
        return in;
    }
}
