package org.geneticsrules.table;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.HearingTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.PartialDate;

/** Writes a pedigree as a table with the columns that it needs: founders first, then litter by litter. */
final class TableWriter {

    private final ColumnNames names;
    private final Pedigree pedigree;
    private final List<Map<String, String>> rows = new ArrayList<>();
    private final List<String> traits;
    private final List<String> loci;

    TableWriter(ColumnNames names, Pedigree pedigree) {
        this.names = names;
        this.pedigree = pedigree;
        Set<String> seen = new LinkedHashSet<>();
        Set<String> tested = new LinkedHashSet<>();
        List<String> written = new ArrayList<>(pedigree.founders());
        pedigree.litters().values().forEach(litter -> written.addAll(litter.kits()));
        for (String id : written) {
            Individual one = pedigree.individual(id);
            looks(one).forEach(observation -> seen.addAll(observation.traits()));
            one.tests().forEach(test -> tested.add(test.locus()));
        }
        traits = new ArrayList<>(seen);
        loci = new ArrayList<>(tested);
    }

    /** The table in which every animal has a row with its id. */
    String text() {
        return text(false);
    }

    /** The table in which kits that no other record needs are counted, those that are alike in one row. */
    String countedText() {
        return text(true);
    }

    private String text(boolean counted) {
        Set<String> counting = counted ? counting() : Set.of();
        for (String founder : pedigree.founders()) {
            individual(pedigree.individual(founder), Optional.empty(), false);
        }
        pedigree.litters().values().forEach(litter -> family(litter, counting));
        List<String> header = header();
        StringBuilder out = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
            printer.printRecord(header);
            for (Map<String, String> row : rows) {
                printer.printRecord(
                        header.stream().map(word -> row.getOrDefault(word, "")).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory cannot fail", e);
        }
        return out.toString();
    }

    /** What is said of the litter alone stands in its first row. */
    private void family(Litter litter, Set<String> counting) {
        boolean first = true;
        // Of several candidates each has a row, which a row that counts cannot have.
        if (litter.kits().isEmpty()
                || (litter.sires() instanceof Paternity.Candidates && counting.containsAll(litter.kits()))) {
            Map<Integer, Map<String, String>> only = new HashMap<>();
            litter(litter, only, true);
            append(only, "");
            first = false;
        }
        Map<Map<String, String>, Integer> alike = new LinkedHashMap<>();
        for (String kit : litter.kits()) {
            if (counting.contains(kit)) {
                alike.merge(records(pedigree.individual(kit)).getOrDefault(0, Map.of()), 1, Integer::sum);
            } else {
                individual(pedigree.individual(kit), Optional.of(litter), first);
                first = false;
            }
        }
        for (Map.Entry<Map<String, String>, Integer> kits : alike.entrySet()) {
            Map<Integer, Map<String, String>> own = new HashMap<>(Map.of(0, new HashMap<>(kits.getKey())));
            litter(litter, own, first);
            first = false;
            put(own, 0, Column.COUNT, Integer.toString(kits.getValue()));
            append(own, "");
        }
    }

    private List<String> header() {
        Set<String> used = new LinkedHashSet<>();
        rows.forEach(row -> used.addAll(row.keySet()));
        List<String> header = new ArrayList<>();
        for (Column column : Column.values()) {
            if (column == Column.ID || used.contains(names.word(column))) {
                header.add(names.word(column));
            }
            if (column == Column.OBSERVER) {
                traits.forEach(trait -> header.add(trait(trait)));
            } else if (column == Column.TEST_ERROR) {
                loci.forEach(locus -> header.add(locus(locus)));
            }
        }
        return header;
    }

    private String trait(String id) {
        return names.beforeTrait() + id;
    }

    private String locus(String id) {
        return names.beforeLocus() + id;
    }

    /** Kits that no other record needs, and of whom one row says all. */
    private Set<String> counting() {
        Set<String> needed = new HashSet<>();
        Set<String> kits = new HashSet<>();
        for (Litter litter : pedigree.litters().values()) {
            litter.dam().ifPresent(needed::add);
            needed.addAll(litter.sires().males());
            litter.fosterDam().ifPresent(needed::add);
            kits.addAll(litter.kits());
        }
        kits.removeAll(needed);
        kits.removeIf(kit -> records(pedigree.individual(kit)).keySet().stream().anyMatch(row -> row > 0));
        return kits;
    }

    private void individual(Individual one, Optional<Litter> litter, boolean first) {
        Map<Integer, Map<String, String>> own = records(one);
        litter.ifPresent(from -> litter(from, own, first));
        append(own, Cells.guarded(one.id()));
    }

    /** What is recorded of one alone, by row. */
    private Map<Integer, Map<String, String>> records(Individual one) {
        Map<Integer, Map<String, String>> own = new HashMap<>();
        one.sex().map(Sex::word).ifPresent(word -> put(own, 0, Column.SEX, word));
        date(own, 0, Column.BORN, one.born());
        one.population().ifPresent(from -> put(own, 0, Column.POPULATION, Cells.guarded(from)));
        if (one.fertility() != Fertility.UNKNOWN) {
            put(own, 0, Column.FERTILITY, one.fertility().word());
        }
        List<Observation> looks = looks(one);
        for (int i = 0; i < looks.size(); i++) {
            observation(own, i, looks.get(i));
        }
        for (int i = 0; i < one.names().size(); i++) {
            name(own, looks.size() + i, one.names().get(i));
        }
        tests(own, one.tests());
        for (int i = 0; i < one.hearing().size(); i++) {
            HearingTest test = one.hearing().get(i);
            date(own, i, Column.HEARING_TESTED_ON, test.date());
            put(own, i, Column.LEFT_EAR, test.left().word());
            put(own, i, Column.RIGHT_EAR, test.right().word());
        }
        return own;
    }

    private void append(Map<Integer, Map<String, String>> own, String id) {
        int count =
                Math.max(1, own.keySet().stream().mapToInt(row -> row + 1).max().orElse(1));
        for (int i = 0; i < count; i++) {
            Map<String, String> row = own.getOrDefault(i, new HashMap<>());
            if (!id.isEmpty()) {
                row.put(names.word(Column.ID), id);
            } else {
                row.putAll(litterWord(own));
            }
            rows.add(row);
        }
    }

    /** Of a litter without a recorded kit every row has the id, since nothing else says whose row it is. */
    private Map<String, String> litterWord(Map<Integer, Map<String, String>> own) {
        String word = names.word(Column.LITTER);
        return Map.of(word, own.getOrDefault(0, Map.of()).getOrDefault(word, ""));
    }

    /** Its parents stand in the row of every kit, the rest in that of the first. */
    private void litter(Litter litter, Map<Integer, Map<String, String>> own, boolean first) {
        put(own, 0, Column.LITTER, Cells.guarded(litter.id()));
        litter.dam().ifPresent(dam -> put(own, 0, Column.DAM, Cells.guarded(dam)));
        if (litter.sires() instanceof Paternity.Known known) {
            put(own, 0, Column.SIRE, Cells.guarded(known.sire()));
        }
        if (!first) {
            return;
        }
        litter.fosterDam().ifPresent(dam -> put(own, 0, Column.FOSTER_DAM, Cells.guarded(dam)));
        date(own, 0, Column.LITTER_BORN, litter.born());
        litter.bornCount().ifPresent(count -> put(own, 0, Column.KITS_BORN, Integer.toString(count)));
        litter.scoredCount().ifPresent(count -> put(own, 0, Column.KITS_SCORED, Integer.toString(count)));
        Ascertainments.write(litter.ascertainment(), (column, cell) -> put(own, 0, column, cell));
        if (litter.sires() instanceof Paternity.Candidates several) {
            put(own, 0, Column.SIRE_OF, Families.sireOf(several));
            for (int i = 0; i < several.candidates().size(); i++) {
                int row = i;
                Paternity.Candidate candidate = several.candidates().get(i);
                candidate.male().ifPresent(male -> put(own, row, Column.SIRE, Cells.guarded(male)));
                candidate.population().ifPresent(from -> put(own, row, Column.SIRE_POPULATION, Cells.guarded(from)));
                put(own, row, Column.SIRE_SHARE, Cells.chance(candidate.share()));
            }
        }
    }

    private void observation(Map<Integer, Map<String, String>> own, int row, Observation seen) {
        occasion(own, row, seen.date().map(LocalDate::toString), seen.stage(), seen.light(), seen.observer());
        for (String trait : seen.traits()) {
            List<String> states =
                    seen.looks().stream().map(look -> state(look, trait)).toList();
            boolean same = states.stream().distinct().count() == 1;
            put(own, row, trait(trait), Cells.guarded(same ? states.get(0) : String.join(Cells.OR, states)));
        }
    }

    /** A name has a row of its own, since a row tells of one occasion. */
    private void name(Map<Integer, Map<String, String>> own, int row, CalledName name) {
        occasion(own, row, name.date().map(TableWriter::said), name.stage(), name.light(), name.observer());
        put(own, row, Column.CALLED, Cells.guarded(name.word()));
        put(own, row, Column.CALLED_IN, Cells.guarded(name.vocabulary()));
        name.facet().ifPresent(of -> put(own, row, Column.FACET, Cells.guarded(of)));
    }

    /** A month is what a spreadsheet makes a day of; a day it leaves a day. */
    private static String said(PartialDate date) {
        return date.exact().isPresent() ? date.toString() : Cells.guarded(date.toString());
    }

    private void occasion(
            Map<Integer, Map<String, String>> own,
            int row,
            Optional<String> date,
            LifeStage stage,
            Optional<String> light,
            Optional<String> observer) {
        date.ifPresent(day -> put(own, row, Column.SEEN_ON, day));
        stage.weeks().ifPresent(weeks -> put(own, row, Column.WEEKS, Integer.toString(weeks)));
        stage.moult().ifPresent(moult -> put(own, row, Column.MOULT, Integer.toString(moult)));
        stage.season().ifPresent(season -> put(own, row, Column.SEASON, season));
        light.ifPresent(word -> put(own, row, Column.LIGHT, Cells.guarded(word)));
        observer.ifPresent(who -> put(own, row, Column.OBSERVER, Cells.guarded(who)));
    }

    /** What was written down as looks, and not read from a name. */
    private static List<Observation> looks(Individual one) {
        return one.observations().stream().filter(seen -> seen.name().isEmpty()).toList();
    }

    private static String state(Phenotype look, String trait) {
        return look.state(trait).orElseThrow();
    }

    /** Tests that share date and error share a row as long as their columns run from left to right, which keeps their order. */
    private void tests(Map<Integer, Map<String, String>> own, List<GenotypeTest> tests) {
        int row = 0;
        int last = -1;
        for (int i = 0; i < tests.size(); i++) {
            GenotypeTest test = tests.get(i);
            int column = loci.indexOf(test.locus());
            if (i > 0) {
                GenotypeTest before = tests.get(i - 1);
                boolean together =
                        before.date().equals(test.date()) && before.error().equals(test.error()) && column > last;
                row += together ? 0 : 1;
            }
            last = column;
            date(own, row, Column.TESTED_ON, test.date());
            if (!test.error().isZero()) {
                put(own, row, Column.TEST_ERROR, Cells.chance(test.error()));
            }
            put(
                    own,
                    row,
                    locus(test.locus()),
                    test.result().stream()
                            .collect(Collectors.collectingAndThen(
                                    Collectors.joining(Cells.OR), (Function<String, String>) Cells::guarded)));
        }
    }

    private void date(Map<Integer, Map<String, String>> own, int row, Column column, Optional<LocalDate> date) {
        date.ifPresent(day -> put(own, row, column, day.toString()));
    }

    private void put(Map<Integer, Map<String, String>> own, int row, Column column, String cell) {
        put(own, row, names.word(column), cell);
    }

    private static void put(Map<Integer, Map<String, String>> own, int row, String word, String cell) {
        own.computeIfAbsent(row, number -> new HashMap<>()).put(word, cell);
    }
}
