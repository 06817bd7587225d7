package org.geneticsrules.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Sex;

/** Puts what the rows said together: kits into litters, and both into records. */
final class Families {

    private static final String OF_LITTER = "litter";
    private static final String OF_KIT = "each kit";

    /** What is said of a litter in the rows of its kits. */
    private static final List<Column> OF_FAMILIES = List.of(
            Column.DAM,
            Column.SIRE,
            Column.SIRE_OF,
            Column.FOSTER_DAM,
            Column.LITTER_BORN,
            Column.KITS_BORN,
            Column.KITS_SCORED,
            Column.ASCERTAINMENT,
            Column.ASCERTAINMENT_SIGN,
            Column.ASCERTAINMENT_WEEKS,
            Column.ASCERTAINMENT_MOULT,
            Column.ASCERTAINMENT_SEASON,
            Column.ASCERTAINMENT_LIGHT,
            Column.ASCERTAINMENT_CHANCE,
            Column.PROBANDS);

    private final RowReader rows;
    private final Problems problems;
    private final Drafts drafts;
    private final Ascertainments ascertainments;

    Families(RowReader rows, Problems problems, Drafts drafts) {
        this.rows = rows;
        this.problems = problems;
        this.drafts = drafts;
        this.ascertainments = new Ascertainments(rows, problems);
    }

    /** Adds every record to a builder; what cannot be one is a problem. */
    void fill(PedigreeBuilder pedigree) {
        group();
        Individual last = null;
        for (Drafts.Animal animal : drafts.animals.values()) {
            last = animal.like.isPresent() && last != null ? alike(animal.id, last) : individual(animal);
            pedigree.add(last);
        }
        drafts.families.forEach((id, family) -> pedigree.add(litter(id, family)));
    }

    private void group() {
        Map<String, List<Drafts.Animal>> unnamed = new LinkedHashMap<>();
        List<List<Drafts.Animal>> litters = new ArrayList<>();
        for (Drafts.Animal animal : drafts.animals.values()) {
            String litter = animal.text(Column.LITTER);
            if (!litter.isEmpty()) {
                join(litter, animal);
            } else if (OF_FAMILIES.stream().anyMatch(animal.said::containsKey) || !animal.candidates.isEmpty()) {
                Optional<String> key = key(animal);
                if (key.isEmpty()) {
                    litters.add(List.of(animal));
                } else {
                    unnamed.computeIfAbsent(key.get(), parents -> {
                                List<Drafts.Animal> kits = new ArrayList<>();
                                litters.add(kits);
                                return kits;
                            })
                            .add(animal);
                }
            }
        }
        drafts.none.forEach(only -> merge(
                only, drafts.families.computeIfAbsent(only.text(Column.LITTER), id -> new Drafts.Family(only.row))));
        drafts.kitless.forEach((litter, only) -> {
            Drafts.Family family = drafts.families.computeIfAbsent(litter, id -> new Drafts.Family(only.row));
            merge(only, family);
        });
        for (List<Drafts.Animal> kits : litters) {
            String id = kits.get(0).id;
            if (drafts.families.containsKey(id)) {
                rows.report(
                        "litter-needed",
                        kits.get(0).row,
                        Column.ID,
                        "the litter of \"" + id + "\" has no id, and another litter has that of its first kit",
                        "the id of the litter in the column of litters");
            } else {
                kits.forEach(kit -> join(id, kit));
            }
        }
    }

    /** What litter-mates whose litter has no id agree in; empty if one of the three is not stated. */
    private static Optional<String> key(Drafts.Animal animal) {
        String born =
                animal.text(Column.LITTER_BORN).isEmpty() ? animal.text(Column.BORN) : animal.text(Column.LITTER_BORN);
        List<String> parts = List.of(animal.text(Column.DAM), animal.text(Column.SIRE), born);
        // No id holds a line break.
        return parts.contains("") || !animal.candidates.isEmpty()
                ? Optional.empty()
                : Optional.of(String.join("\n", parts));
    }

    private void join(String litter, Drafts.Animal kit) {
        Drafts.Family family = drafts.families.computeIfAbsent(litter, id -> new Drafts.Family(kit.row));
        family.kits.add(kit);
        if (kit.like.isEmpty()) {
            merge(kit, family);
        }
    }

    private void merge(Drafts.Animal from, Drafts.Family family) {
        for (Column column : OF_FAMILIES) {
            Drafts.Said said = from.said.get(column);
            if (said != null) {
                rows.say(family.said, column, said);
            }
        }
        if (from.candidates.isEmpty()) {
            return;
        }
        if (family.candidates.isEmpty()) {
            family.candidates.addAll(from.candidates);
            return;
        }
        boolean same = family.candidates.size() == from.candidates.size();
        for (int i = 0; same && i < from.candidates.size(); i++) {
            same = family.candidates.get(i).sameAs(from.candidates.get(i));
        }
        if (!same) {
            rows.report(
                    "rows-differ",
                    from.candidates.get(0).row(),
                    Column.SIRE_SHARE,
                    "the candidate sires are others than those of a litter-mate",
                    "the same for each kit, or those of one kit alone");
        }
    }

    private Individual individual(Drafts.Animal animal) {
        return new Individual(
                animal.id,
                word(animal, Column.SEX, Sex.words(), "sex").flatMap(Sex::of),
                rows.date(row(animal, Column.BORN), Column.BORN),
                text(animal.text(Column.POPULATION)),
                animal.observations.stream().map(Drafts.Read::value).toList(),
                animal.names.stream().map(Drafts.Read::value).toList(),
                animal.tests.stream().map(Drafts.Read::value).toList(),
                animal.hearing.stream().map(Drafts.Read::value).toList(),
                word(animal, Column.FERTILITY, Fertility.words(), "fertility")
                        .flatMap(Fertility::of)
                        .orElse(Fertility.UNKNOWN));
    }

    /** Kits of one counted row follow one another, and share their records. */
    private static Individual alike(String id, Individual first) {
        return new Individual(
                id,
                first.sex(),
                first.born(),
                first.population(),
                first.observations(),
                first.names(),
                first.tests(),
                first.hearing(),
                first.fertility());
    }

    private static int row(Drafts.Animal animal, Column column) {
        Drafts.Said said = animal.said.get(column);
        return said == null ? animal.row : said.row();
    }

    private Optional<String> word(Drafts.Animal animal, Column column, List<String> words, String what) {
        String word = animal.text(column);
        if (!word.isEmpty() && !words.contains(word)) {
            problems.unknown("unknown-" + what, rows.pointer(row(animal, column), column), what, word, words);
        }
        return text(word);
    }

    private static Optional<String> text(String text) {
        return Optional.of(text).filter(stated -> !stated.isEmpty());
    }

    private Litter litter(String id, Drafts.Family family) {
        return new Litter(
                id,
                text(family.text(Column.DAM)),
                sires(family),
                family.said.containsKey(Column.LITTER_BORN)
                        ? rows.date(family.row(Column.LITTER_BORN), Column.LITTER_BORN)
                        : Optional.empty(),
                count(family, Column.KITS_BORN),
                count(family, Column.KITS_SCORED),
                text(family.text(Column.FOSTER_DAM)),
                family.kits.stream().map(kit -> kit.id).toList(),
                ascertainments.read(family));
    }

    private OptionalInt count(Drafts.Family family, Column column) {
        return family.said.containsKey(column) ? rows.whole(family.row(column), column) : OptionalInt.empty();
    }

    private Paternity sires(Drafts.Family family) {
        String known = family.text(Column.SIRE);
        String of = family.text(Column.SIRE_OF);
        if (family.candidates.isEmpty()) {
            if (!of.isEmpty()) {
                rows.report(
                        "unclear-sire",
                        family.row(Column.SIRE_OF),
                        Column.SIRE_OF,
                        "\"" + of + "\" stands here, but no candidate has a share",
                        "candidates with shares, or an empty cell");
            }
            return known.isEmpty() ? Paternity.unknown() : Paternity.of(known);
        }
        int row = family.candidates.get(0).row();
        if (!known.isEmpty()) {
            rows.report(
                    "unclear-sire",
                    family.row(Column.SIRE),
                    Column.SIRE,
                    "\"" + known + "\" is the sire without a share, but there are candidates with shares",
                    "either one sire, or a share for each candidate");
            return Paternity.unknown();
        }
        if (!Set.of(OF_LITTER, OF_KIT).contains(of)) {
            problems.unknown(
                    "unknown-sire-of",
                    rows.pointer(family.row(Column.SIRE_OF), Column.SIRE_OF),
                    "answer to what the shares are of",
                    of,
                    List.of(OF_LITTER, OF_KIT));
            return Paternity.unknown();
        }
        try {
            return new Paternity.Candidates(
                    family.candidates.stream().map(Families::candidate).toList(), of.equals(OF_KIT));
        } catch (IllegalArgumentException e) {
            rows.report(
                    "bad-candidates",
                    row,
                    Column.SIRE_SHARE,
                    String.valueOf(e.getMessage()),
                    "each male once, and shares that sum to exactly 1");
            return Paternity.unknown();
        }
    }

    private static Paternity.Candidate candidate(Drafts.Candidate one) {
        Probability share = one.share();
        return new Paternity.Candidate(text(one.male()), text(one.population()), share);
    }

    /** The word for what the shares of candidates are of. */
    static String sireOf(Paternity.Candidates several) {
        return several.perKit() ? OF_KIT : OF_LITTER;
    }
}
