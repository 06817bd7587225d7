package org.geneticsrules.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.BiConsumer;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Ascertainment.AtLeastOne;
import org.geneticsrules.pedigree.Ascertainment.ParentsChosen;
import org.geneticsrules.pedigree.Ascertainment.Probands;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.trait.Sighting;

/** How the columns say in which way a litter came to be among the records. */
final class Ascertainments {

    private static final String COMPLETE = "complete";
    private static final String AT_LEAST_ONE = "at least one";
    private static final String PROBANDS = "probands";
    private static final String PARENTS_CHOSEN = "parents chosen";
    private static final List<String> WORDS = List.of(COMPLETE, AT_LEAST_ONE, PROBANDS, PARENTS_CHOSEN);

    /** What the word in the first column may need. */
    private static final List<Column> DETAILS = List.of(
            Column.ASCERTAINMENT_SIGN,
            Column.ASCERTAINMENT_WEEKS,
            Column.ASCERTAINMENT_MOULT,
            Column.ASCERTAINMENT_SEASON,
            Column.ASCERTAINMENT_LIGHT,
            Column.ASCERTAINMENT_CHANCE,
            Column.PROBANDS);

    private static final Set<Column> OF_PROBANDS = Set.of(Column.ASCERTAINMENT_CHANCE, Column.PROBANDS);

    private final RowReader rows;
    private final Problems problems;

    Ascertainments(RowReader rows, Problems problems) {
        this.rows = rows;
        this.problems = problems;
    }

    /** What the rows of a litter say; not stated if they say nothing, or what is a problem. */
    Ascertainment read(Drafts.Family family) {
        String how = family.text(Column.ASCERTAINMENT);
        if (!how.isEmpty() && !WORDS.contains(how)) {
            problems.unknown(
                    "unknown-ascertainment",
                    rows.pointer(family.row(Column.ASCERTAINMENT), Column.ASCERTAINMENT),
                    "ascertainment",
                    how,
                    WORDS);
            return Ascertainment.unknown();
        }
        if (needless(family, how) || how.isEmpty()) {
            return Ascertainment.unknown();
        }
        if (how.equals(COMPLETE)) {
            return Ascertainment.complete();
        }
        Optional<Sighting> sign = sign(family, how);
        Optional<Probability> chance = how.equals(PROBANDS) ? chance(family) : Optional.empty();
        OptionalInt count = count(family);
        if (sign.isEmpty() || (how.equals(PROBANDS) && chance.isEmpty())) {
            return Ascertainment.unknown();
        }
        return chance.<Ascertainment>map(each -> new Probands(sign.get(), each, count))
                .orElseGet(() -> how.equals(AT_LEAST_ONE) ? new AtLeastOne(sign.get()) : new ParentsChosen(sign.get()));
    }

    /** Reports cells to which the word gives no meaning. */
    private boolean needless(Drafts.Family family, String how) {
        boolean any = false;
        for (Column column : DETAILS) {
            boolean meant =
                    !how.isEmpty() && !how.equals(COMPLETE) && (how.equals(PROBANDS) || !OF_PROBANDS.contains(column));
            if (!meant && family.said.containsKey(column)) {
                any = true;
                rows.report(
                        "unclear-ascertainment",
                        family.row(column),
                        column,
                        "\"" + family.text(column) + "\" stands here, but the ascertainment of the litter is "
                                + (how.isEmpty() ? "not stated" : "\"" + how + "\""),
                        how.isEmpty() ? "an ascertainment: one of " + String.join(", ", WORDS) : "an empty cell");
            }
        }
        return any;
    }

    private Optional<Sighting> sign(Drafts.Family family, String how) {
        if (!family.said.containsKey(Column.ASCERTAINMENT_SIGN)) {
            rows.report(
                    "missing-sign",
                    family.row(Column.ASCERTAINMENT),
                    Column.ASCERTAINMENT,
                    "the ascertainment is \"" + how + "\", but no sign is stated",
                    "a look such as \"eye colour: pink\" in the column of signs");
            return Optional.empty();
        }
        Optional<Phenotype> look = look(family.row(Column.ASCERTAINMENT_SIGN));
        LifeStage stage = new LifeStage(
                whole(family, Column.ASCERTAINMENT_WEEKS),
                whole(family, Column.ASCERTAINMENT_MOULT),
                rows.season(family.row(Column.ASCERTAINMENT_SEASON), Column.ASCERTAINMENT_SEASON));
        Optional<String> light = rows.light(family.row(Column.ASCERTAINMENT_LIGHT), Column.ASCERTAINMENT_LIGHT);
        return look.map(seen -> new Sighting(stage, seen, light));
    }

    private OptionalInt whole(Drafts.Family family, Column column) {
        return rows.whole(family.row(column), column);
    }

    private Optional<Phenotype> look(int row) {
        String text = rows.text(row, Column.ASCERTAINMENT_SIGN);
        try {
            Phenotype look = Phenotype.parse(text);
            for (String trait : look.traits()) {
                String state = look.state(trait).orElseThrow();
                if (!PlainWords.are(trait) || !PlainWords.are(state)) {
                    throw new IllegalArgumentException(
                            "\"" + trait + ": " + state + "\" is not a trait and a state in plain words");
                }
            }
            return Optional.of(look);
        } catch (IllegalArgumentException e) {
            rows.report(
                    "bad-sign",
                    row,
                    Column.ASCERTAINMENT_SIGN,
                    String.valueOf(e.getMessage()),
                    "a look such as \"eye colour: pink\"");
            return Optional.empty();
        }
    }

    private Optional<Probability> chance(Drafts.Family family) {
        if (!family.said.containsKey(Column.ASCERTAINMENT_CHANCE)) {
            rows.report(
                    "missing-chance",
                    family.row(Column.ASCERTAINMENT),
                    Column.ASCERTAINMENT,
                    "there are probands, but not with which chance a kit becomes one",
                    "a chance above 0 in the column of ascertainment chances");
            return Optional.empty();
        }
        int row = family.row(Column.ASCERTAINMENT_CHANCE);
        Optional<Probability> chance = rows.chance(row, Column.ASCERTAINMENT_CHANCE);
        if (chance.filter(Probability::isZero).isPresent()) {
            rows.report(
                    "zero-chance",
                    row,
                    Column.ASCERTAINMENT_CHANCE,
                    "with a chance of 0 no kit would have been brought to notice",
                    "a chance above 0");
        }
        return chance.filter(each -> !each.isZero());
    }

    private OptionalInt count(Drafts.Family family) {
        OptionalInt count = whole(family, Column.PROBANDS);
        if (count.isPresent() && count.getAsInt() == 0) {
            rows.report(
                    "no-proband",
                    family.row(Column.PROBANDS),
                    Column.PROBANDS,
                    "without a proband the litter would not have been noticed",
                    "1 or more, or an empty cell if nobody counted");
            return OptionalInt.empty();
        }
        return count;
    }

    /** Puts into cells what a litter says; nothing if nobody wrote it down. */
    static void write(Ascertainment how, BiConsumer<Column, String> cells) {
        if (how instanceof Ascertainment.Complete) {
            cells.accept(Column.ASCERTAINMENT, COMPLETE);
        } else if (how instanceof AtLeastOne one) {
            cells.accept(Column.ASCERTAINMENT, AT_LEAST_ONE);
            sign(one.sign(), cells);
        } else if (how instanceof ParentsChosen chosen) {
            cells.accept(Column.ASCERTAINMENT, PARENTS_CHOSEN);
            sign(chosen.sign(), cells);
        } else if (how instanceof Probands some) {
            cells.accept(Column.ASCERTAINMENT, PROBANDS);
            sign(some.sign(), cells);
            cells.accept(Column.ASCERTAINMENT_CHANCE, Cells.chance(some.chance()));
            some.count().ifPresent(count -> cells.accept(Column.PROBANDS, Integer.toString(count)));
        }
    }

    private static void sign(Sighting sign, BiConsumer<Column, String> cells) {
        cells.accept(Column.ASCERTAINMENT_SIGN, Cells.guarded(sign.look().toString()));
        LifeStage stage = sign.stage();
        stage.weeks().ifPresent(weeks -> cells.accept(Column.ASCERTAINMENT_WEEKS, Integer.toString(weeks)));
        stage.moult().ifPresent(moult -> cells.accept(Column.ASCERTAINMENT_MOULT, Integer.toString(moult)));
        stage.season().ifPresent(season -> cells.accept(Column.ASCERTAINMENT_SEASON, season));
        sign.light().ifPresent(light -> cells.accept(Column.ASCERTAINMENT_LIGHT, Cells.guarded(light)));
    }
}
