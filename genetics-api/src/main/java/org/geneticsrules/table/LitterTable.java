package org.geneticsrules.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.compared.Standings;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.comparison.LitterEvidence;
import org.geneticsrules.comparison.LitterFit;

/**
 * Writes what litters say of models as a CSV table by RFC 4180, one row for each litter and model, litters in the order in which they were
 * looked at:
 *
 * <table>
 * <caption>Columns</caption>
 * <tr><th>column</th><th>what stands there</th></tr>
 * <tr><td>{@code litter}</td><td>id of the litter</td></tr>
 * <tr><td>{@code model}</td><td>what the model is called</td></tr>
 * <tr><td>{@code log likelihood}</td><td>where models are compared: the natural logarithm of the chance of the kits' records, given those
 *     of litters before; {@code impossible}; or empty, where an earlier litter is impossible already</td></tr>
 * <tr><td>{@code log ratio}</td><td>the sum of these up to this litter, over that of the first model; empty where either is impossible</td></tr>
 * <tr><td>{@code standing}</td><td>how the litter goes with the model: {@code impossible}, {@code unlikely}, {@code fine} or {@code not
 *     judged}; of several models only with the best one</td></tr>
 * <tr><td>{@code p}</td><td>the chance of counts no likelier than these</td></tr>
 * <tr><td>{@code standard error}</td><td>of p, where it was drawn</td></tr>
 * <tr><td>{@code counts}</td><td>how many kits show which look, {@code 3 eye colour: dark | 1 eye colour: pink}</td></tr>
 * <tr><td>{@code not tested because}</td><td>why there is no p</td></tr>
 * </table>
 *
 * <p>Texts that a spreadsheet would run as a formula or change are guarded as those of pedigrees are. A table has no room for cautions and
 * assumptions, which the text and the document of the same answer have.
 *
 * <p>Stateless and thread-safe.
 */
public final class LitterTable {

    private static final MathContext DIGITS = new MathContext(9);

    private static final List<String> HEADER = List.of(
            "litter",
            "model",
            "log likelihood",
            "log ratio",
            "standing",
            "p",
            "standard error",
            "counts",
            "not tested because");

    private LitterTable() {}

    /**
     * Returns the table of an answer.
     *
     * @param answer what litters say
     * @return CSV, lines ending in carriage return and line feed
     */
    public static String write(LitterAnswer answer) {
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            printer.printRecord(HEADER);
            if (answer.comparison().isPresent()) {
                compared(answer.comparison().get(), answer.fit(), printer);
            } else if (answer.fit().isPresent()) {
                for (LitterFit litter : answer.fit().get().litters()) {
                    row(litter.litter(), answer.fit().get().name(), "", "", Optional.of(litter), printer);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory cannot fail", e);
        }
        return out.toString();
    }

    private static void compared(Standings standings, Optional<FittedModel> fit, CSVPrinter printer)
            throws IOException {
        double[] sums = new double[standings.models().size()];
        Map<String, LitterFit> fits = fit.stream()
                .flatMap(one -> one.litters().stream())
                .collect(Collectors.toMap(LitterFit::litter, litter -> litter, (first, again) -> first));
        for (LitterEvidence litter : standings.litters()) {
            for (int m = 0; m < sums.length; m++) {
                sums[m] += litter.known().get(m) ? litter.logs().get(m) : Double.NEGATIVE_INFINITY;
            }
            for (int m = 0; m < sums.length; m++) {
                String model = standings.models().get(m).title();
                boolean best = fit.filter(one -> one.name().equals(model)).isPresent();
                row(
                        litter.litter(),
                        model,
                        litter.known().get(m) ? log(litter.logs().get(m)) : "",
                        Double.isInfinite(sums[m]) || Double.isInfinite(sums[0]) ? "" : plain(sums[m] - sums[0]),
                        best ? Optional.ofNullable(fits.get(litter.litter())) : Optional.empty(),
                        printer);
            }
        }
    }

    private static void row(
            String litter, String model, String log, String ratio, Optional<LitterFit> fit, CSVPrinter printer)
            throws IOException {
        printer.printRecord(
                Cells.guarded(litter),
                Cells.guarded(model),
                log,
                ratio,
                fit.map(one -> one.standing().words()).orElse(""),
                fit.flatMap(LitterFit::p).map(LitterTable::plain).orElse(""),
                fit.filter(one -> one.standardError() > 0)
                        .map(one -> plain(one.standardError()))
                        .orElse(""),
                fit.map(LitterTable::counts).orElse(""),
                fit.flatMap(LitterFit::untested).orElse(""));
    }

    private static String counts(LitterFit litter) {
        return litter.counts().entrySet().stream()
                .map(one -> one.getValue() + " " + one.getKey())
                .collect(Collectors.joining(" | "));
    }

    private static String log(double log) {
        return log == Double.NEGATIVE_INFINITY ? "impossible" : plain(log);
    }

    private static String plain(double number) {
        return number == 0
                ? "0"
                : new BigDecimal(number, DIGITS).stripTrailingZeros().toPlainString();
    }
}
