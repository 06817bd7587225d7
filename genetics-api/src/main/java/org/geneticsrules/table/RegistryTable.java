package org.geneticsrules.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.Origin;
import org.geneticsrules.answer.recorded.RegistryReport;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;

/**
 * Writes what a check of a registry found as a CSV table by RFC 4180, one row for each animal:
 *
 * <table>
 * <caption>Columns</caption>
 * <tr><th>column</th><th>what stands there</th></tr>
 * <tr><td>{@code id}</td><td>id of the animal</td></tr>
 * <tr><td>{@code verdict}</td><td>{@code accept}, {@code query}, {@code look again} or {@code not decided}</td></tr>
 * <tr><td>{@code reason}</td><td>why, in sentences that can be sent</td></tr>
 * <tr><td>{@code conflicts}</td><td>numbers of the sets of records that do not fit one another, from 1, with blanks between</td></tr>
 * <tr><td>{@code inbreeding}</td><td>the coefficient of inbreeding as recorded ancestors go, as a decimal; with uncertain sires the expected
 * value</td></tr>
 * <tr><td>{@code generations known}</td><td>to how many complete generations these ancestors add up</td></tr>
 * <tr><td>{@code carries: C c, few carriers} and so on</td><td>how likely it is to carry the allele, with founders as in the population
 *     named, as a decimal; empty if that is not settled</td></tr>
 * <tr><td>{@code standing: C c, few carriers} and so on</td><td>{@code exact}, {@code sampled}, {@code not converged}, {@code too large}, {@code
 * not in time} or {@code contradicted}</td></tr>
 * <tr><td>{@code standard error: C c, few carriers} and so on</td><td>how far an estimate may be off; empty where it is none</td></tr>
 * </table>
 *
 * <p>Texts that a spreadsheet would run as a formula or change are guarded as those of pedigrees are.
 *
 * <p>Stateless and thread-safe.
 */
public final class RegistryTable {

    private static final MathContext DIGITS = new MathContext(9);

    private RegistryTable() {}

    /**
     * Returns the table of a report.
     *
     * @param report a report
     * @return CSV, lines ending in carriage return and line feed
     */
    public static String write(RegistryReport report) {
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            printer.printRecord(header(report));
            for (Entry entry : report.entries()) {
                printer.printRecord(row(entry));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory cannot fail", e);
        }
        return out.toString();
    }

    private static List<String> header(RegistryReport report) {
        List<String> header =
                new ArrayList<>(List.of("id", "verdict", "reason", "conflicts", "inbreeding", "generations known"));
        for (HiddenAllele allele : report.carrying()) {
            for (Origin origin : report.origins()) {
                String of = allele.locus() + " " + allele.allele().symbol() + ", "
                        + origin.assumed().map(population -> population.id()).orElse("as recorded");
                header.add("carries: " + of);
                header.add("standing: " + of);
                header.add("standard error: " + of);
            }
        }
        return header;
    }

    private static String plain(double number) {
        return number == 0
                ? "0"
                : new BigDecimal(number, DIGITS).stripTrailingZeros().toPlainString();
    }

    private static List<String> row(Entry entry) {
        List<String> row = new ArrayList<>();
        row.add(Cells.guarded(entry.animal()));
        row.add(entry.verdict().word());
        row.add(Cells.guarded(entry.reason()));
        row.add(Cells.guarded(entry.conflicts().stream()
                .map(place -> Integer.toString(place + 1))
                .collect(Collectors.joining(" "))));
        row.add(plain(entry.inbreeding()));
        row.add(plain(entry.generations()));
        for (Chance chance : entry.chances()) {
            row.add(
                    chance.value().isPresent()
                            ? BigDecimal.valueOf(chance.value().getAsDouble()).toPlainString()
                            : "");
            row.add(chance.standing().name().toLowerCase(Locale.ROOT).replace('_', ' '));
            row.add(
                    chance.standardError().isPresent()
                            ? BigDecimal.valueOf(chance.standardError().getAsDouble())
                                    .toPlainString()
                            : "");
        }
        return row;
    }
}
