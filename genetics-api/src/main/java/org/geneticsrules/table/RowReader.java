package org.geneticsrules.table;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Hearing;
import org.geneticsrules.pedigree.HearingTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.vocabulary.PartialDate;

/** Reads rows one by one and notes what they say of whom; what cannot be read is a problem at its cell. */
final class RowReader {

    private static final Pattern WHOLE = Pattern.compile("[0-9]{1,9}");

    /** What a row says of an individual alone, or of the litter of its kits; the sire is a case of its own. */
    private static final List<Column> SCALARS = List.of(
            Column.SEX,
            Column.BORN,
            Column.POPULATION,
            Column.FERTILITY,
            Column.LITTER,
            Column.DAM,
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

    private static final Set<Column> OF_INDIVIDUALS =
            Set.of(Column.SEX, Column.BORN, Column.POPULATION, Column.FERTILITY);

    /** What says when, how and by whom the traits of a row were seen. */
    private static final List<Column> OF_LOOKS =
            List.of(Column.SEEN_ON, Column.WEEKS, Column.MOULT, Column.SEASON, Column.LIGHT, Column.OBSERVER);

    private static final Set<Column> IDS = Set.of(
            Column.POPULATION, Column.LITTER, Column.DAM, Column.FOSTER_DAM, Column.SIRE, Column.SIRE_POPULATION);

    /** Where ids of animals stand; one without a row of its own must not come to mean a kit that is counted. */
    private static final List<Column> NAMES = List.of(Column.ID, Column.DAM, Column.SIRE, Column.FOSTER_DAM);

    private final Sheet sheet;
    private final Headers headers;
    private final Problems problems;
    private final Drafts drafts;
    private final CountedKits counted = new CountedKits();

    /** Ids and names of states that were found to be good; few of either are in one row only. */
    private final Set<String> ids = new HashSet<>();

    private final Set<String> states = new HashSet<>();

    RowReader(Sheet sheet, Headers headers, Problems problems, Drafts drafts) {
        this.sheet = sheet;
        this.headers = headers;
        this.problems = problems;
        this.drafts = drafts;
    }

    void read() {
        for (int row = 0; row < sheet.rows().size(); row++) {
            for (Column column : NAMES) {
                counted.take(text(row, column));
            }
        }
        for (int row = 0; row < sheet.rows().size(); row++) {
            strays(row);
            String id = text(row, Column.ID);
            String count = cell(row, Column.COUNT);
            if (id.isEmpty() && count.isEmpty()) {
                litterAlone(row);
            } else if (id.isEmpty()) {
                alike(row);
            } else if (isId(row, Column.ID, id)) {
                if (!count.isEmpty() && !count.equals("1")) {
                    report(
                            "counted-id",
                            row,
                            Column.COUNT,
                            "\"" + id + "\" is one animal, but \"" + count + "\" are counted",
                            "1 or an empty cell, or no id where several kits are alike");
                }
                Drafts.Animal animal = drafts.animals.get(id);
                if (animal == null) {
                    animal = new Drafts.Animal(id, row);
                    drafts.animals.put(id, animal);
                }
                whole(row, animal);
            }
        }
    }

    /** Cells beyond the header, or under no word. */
    private void strays(int row) {
        List<String> cells = sheet.rows().get(row).cells();
        for (int column = 0; column < cells.size(); column++) {
            boolean named = column < sheet.header().size() && !headers.unnamed.contains(column);
            if (!named && !cells.get(column).isEmpty()) {
                problems.add(
                        "unnamed-column",
                        Pointer.of(Integer.toString(row)),
                        "\"" + cells.get(column) + "\" stands in a column that has no word in the header",
                        "a word in the header, or no cell");
            }
        }
    }

    /** Kits of a litter of whom nothing else is known, so that no id tells them apart. */
    private void alike(int row) {
        String litter = text(row, Column.LITTER);
        OptionalInt count = whole(row, Column.COUNT);
        boolean kits = count.orElse(0) > 0 && Individual.isId(litter);
        Drafts.Animal first = new Drafts.Animal(kits ? counted.next(litter) : "", row);
        whole(row, first);
        if (litter.isEmpty()) {
            report(
                    "missing-litter",
                    row,
                    Column.COUNT,
                    "kits are counted, but the row does not say of which litter",
                    "the id of their litter in the column of litters");
        } else if (!counted.add(count.orElse(0))) {
            report(
                    "too-many-kits",
                    row,
                    Column.COUNT,
                    "with these the table counts more than " + CountedKits.MOST + " kits",
                    "fewer, or several tables");
        } else if (kits) {
            drafts.animals.put(first.id, first);
            for (int kit = 1; kit < count.getAsInt(); kit++) {
                Drafts.Animal one = new Drafts.Animal(counted.next(litter), first);
                drafts.animals.put(one.id, one);
            }
        } else if (first.said.containsKey(Column.LITTER)) {
            drafts.none.add(first);
        }
    }

    private void litterAlone(int row) {
        String litter = text(row, Column.LITTER);
        boolean individual =
                OF_INDIVIDUALS.stream().anyMatch(column -> !cell(row, column).isEmpty());
        if (litter.isEmpty() || individual) {
            report(
                    "missing-id",
                    row,
                    Column.ID,
                    "the row has no id",
                    "an id, a count of kits of a litter, or a litter and what is known of it alone");
            return;
        }
        Drafts.Animal kitless = Individual.isId(litter)
                ? drafts.kitless.computeIfAbsent(litter, id -> new Drafts.Animal("", row))
                : new Drafts.Animal("", row);
        whole(row, kitless);
        if (!kitless.observations.isEmpty()
                || !kitless.names.isEmpty()
                || !kitless.tests.isEmpty()
                || !kitless.hearing.isEmpty()) {
            report(
                    "missing-id",
                    row,
                    Column.ID,
                    "what was seen or tested is said of nobody",
                    "an id, or a count of kits");
        }
    }

    private void whole(int row, Drafts.Animal animal) {
        for (Column column : SCALARS) {
            String raw = cell(row, column);
            if (!raw.isEmpty()) {
                String text = IDS.contains(column) ? Cells.unguarded(raw) : raw;
                if (!IDS.contains(column) || isId(row, column, text)) {
                    say(animal.said, column, new Drafts.Said(text, row));
                }
            }
        }
        sire(row, animal);
        observation(row, animal);
        tests(row, animal);
        hearing(row, animal);
    }

    /** Notes what a cell says, unless another said otherwise. */
    void say(Map<Column, Drafts.Said> said, Column column, Drafts.Said now) {
        Drafts.Said before = said.putIfAbsent(column, now);
        if (before != null && !before.text().equals(now.text())) {
            report(
                    "rows-differ",
                    now.row(),
                    column,
                    "\"" + now.text() + "\" stands here, but \"" + before.text() + "\" in line "
                            + sheet.place(before.row(), 0).line(),
                    "the same, or an empty cell");
        }
    }

    private void sire(int row, Drafts.Animal animal) {
        String male = text(row, Column.SIRE);
        String population = text(row, Column.SIRE_POPULATION);
        String share = cell(row, Column.SIRE_SHARE);
        boolean good = (male.isEmpty() || isId(row, Column.SIRE, male))
                && (population.isEmpty() || isId(row, Column.SIRE_POPULATION, population));
        if (share.isEmpty() && population.isEmpty()) {
            if (good && !male.isEmpty()) {
                say(animal.said, Column.SIRE, new Drafts.Said(male, row));
            }
            return;
        }
        if (!male.isEmpty() && !population.isEmpty()) {
            report(
                    "unclear-candidate",
                    row,
                    Column.SIRE_POPULATION,
                    "the candidate is \"" + male + "\" and one who is not recorded",
                    "either a sire or a sire population");
            return;
        }
        Optional<Probability> chance = chance(row, Column.SIRE_SHARE);
        if (chance.filter(Probability::isZero).isPresent()) {
            report("zero-chance", row, Column.SIRE_SHARE, "the share is 0", "a share above 0");
        } else if (share.isEmpty()) {
            report("missing-share", row, Column.SIRE_POPULATION, "the candidate has no share", "a share such as 0.5");
        } else if (good) {
            chance.ifPresent(value -> animal.candidates.add(new Drafts.Candidate(male, population, value, row)));
        }
    }

    private void observation(int row, Drafts.Animal animal) {
        Map<String, List<String>> shown = new LinkedHashMap<>();
        int most = 1;
        boolean good = true;
        int first = Headers.NONE;
        for (Map.Entry<String, Integer> trait : headers.traits.entrySet()) {
            String cell = Cells.unguarded(sheet.rows().get(row).cell(trait.getValue()));
            if (cell.isEmpty()) {
                continue;
            }
            first = first == Headers.NONE ? trait.getValue() : first;
            List<String> alternatives = Cells.alternatives(cell);
            for (String state : alternatives) {
                if (!states.contains(state) && PlainWords.are(state)) {
                    states.add(state);
                } else if (!states.contains(state)) {
                    good = false;
                    report("bad-name", row, trait.getValue(), "\"" + state + "\" cannot name a state", "plain words");
                }
            }
            if (alternatives.size() > 1 && most > 1 && alternatives.size() != most) {
                good = false;
                report(
                        "looks-differ",
                        row,
                        trait.getValue(),
                        alternatives.size() + " states are listed here, but " + most + " of another trait",
                        "one state, or one for each look");
            }
            most = Math.max(most, alternatives.size());
            shown.put(trait.getKey(), alternatives);
        }
        Optional<PartialDate> when = partialDate(row);
        Optional<LocalDate> date = when.flatMap(PartialDate::exact);
        if (when.isPresent() && date.isEmpty() && !shown.isEmpty()) {
            report(
                    "bad-date",
                    row,
                    Column.SEEN_ON,
                    "\"" + when.get() + "\" is no day, which a look needs",
                    "a date such as 2026-05-01; a name may be of a month or a year, in a row of its own");
        }
        LifeStage stage = new LifeStage(whole(row, Column.WEEKS), whole(row, Column.MOULT), season(row, Column.SEASON));
        Optional<String> light = light(row, Column.LIGHT);
        Optional<String> observer = observer(row);
        boolean named = name(row, when, stage, light, observer, animal);
        if (shown.isEmpty() && !named) {
            alone(row, OF_LOOKS, "no trait and no name");
        } else if (good && !shown.isEmpty()) {
            Set<Phenotype> looks = new LinkedHashSet<>();
            for (int look = 0; look < most; look++) {
                Map<String, String> one = new LinkedHashMap<>();
                for (Map.Entry<String, List<String>> trait : shown.entrySet()) {
                    List<String> all = trait.getValue();
                    one.put(trait.getKey(), all.size() == 1 ? all.get(0) : all.get(look));
                }
                looks.add(Phenotype.from(one));
            }
            animal.observations.add(new Drafts.Read<>(
                    new Observation(date, stage, looks, light, observer, Optional.empty()), row, first));
        }
    }

    Optional<String> season(int row, Column column) {
        String season = cell(row, column);
        if (season.isEmpty() || LifeStage.isSeasonName(season)) {
            return Optional.of(season).filter(name -> !name.isEmpty());
        }
        report("bad-season", row, column, "\"" + season + "\" cannot name a season", "letters and spaces");
        return Optional.empty();
    }

    /** Notes what it was called; tells whether the row says that. */
    private boolean name(
            int row,
            Optional<PartialDate> date,
            LifeStage stage,
            Optional<String> light,
            Optional<String> observer,
            Drafts.Animal animal) {
        String word = text(row, Column.CALLED);
        String vocabulary = text(row, Column.CALLED_IN);
        if (word.isEmpty()) {
            alone(row, List.of(Column.CALLED_IN, Column.FACET), "no name");
            return false;
        }
        if (vocabulary.isEmpty()) {
            report(
                    "missing-vocabulary",
                    row,
                    Column.CALLED,
                    "\"" + word + "\" is said, but the row does not say by whose words",
                    "a vocabulary or a region in the same row");
            return true;
        }
        String facet = text(row, Column.FACET);
        boolean plain = facet.isEmpty() || PlainWords.are(facet);
        if (!plain) {
            report("bad-name", row, Column.FACET, "\"" + facet + "\" cannot name a facet", "plain words");
        }
        boolean good = isId(row, Column.CALLED, word);
        good = isId(row, Column.CALLED_IN, vocabulary) && good;
        if (good && plain) {
            animal.names.add(new Drafts.Read<>(
                    new CalledName(
                            word,
                            vocabulary,
                            Optional.of(facet).filter(of -> !of.isEmpty()),
                            date,
                            stage,
                            light,
                            observer),
                    row,
                    headers.of(Column.CALLED)));
        }
        return true;
    }

    Optional<String> light(int row, Column column) {
        String light = text(row, column);
        if (!light.isEmpty() && !PlainWords.are(light)) {
            report("bad-name", row, column, "\"" + light + "\" cannot name a light", "plain words");
            return Optional.empty();
        }
        return Optional.of(light).filter(word -> !word.isEmpty());
    }

    private Optional<String> observer(int row) {
        String who = text(row, Column.OBSERVER);
        return Optional.of(who).filter(text -> !text.isEmpty() && isId(row, Column.OBSERVER, text));
    }

    private void tests(int row, Drafts.Animal animal) {
        Optional<LocalDate> date = date(row, Column.TESTED_ON);
        Optional<Probability> error = chance(row, Column.TEST_ERROR);
        if (error.filter(Probability::isOne).isPresent()) {
            report("certain-error", row, Column.TEST_ERROR, "a test that is always wrong tells nothing", "less than 1");
            return;
        }
        boolean any = false;
        for (Map.Entry<String, Integer> locus : headers.loci.entrySet()) {
            String cell = Cells.unguarded(sheet.rows().get(row).cell(locus.getValue()));
            if (cell.isEmpty()) {
                continue;
            }
            any = true;
            List<String> results = Cells.alternatives(cell);
            Optional<String> bad =
                    results.stream().filter(one -> !GenotypeTest.isResult(one)).findFirst();
            if (bad.isPresent()) {
                report(
                        "bad-result",
                        row,
                        locus.getValue(),
                        "\"" + bad.get() + "\" is no genotype of one locus",
                        "genotype text such as C/c");
            } else {
                animal.tests.add(new Drafts.Read<>(
                        new GenotypeTest(
                                date, locus.getKey(), new LinkedHashSet<>(results), error.orElse(Probability.ZERO)),
                        row,
                        locus.getValue()));
            }
        }
        if (!any) {
            alone(row, List.of(Column.TESTED_ON, Column.TEST_ERROR), "no locus");
        }
    }

    private void hearing(int row, Drafts.Animal animal) {
        Optional<LocalDate> date = date(row, Column.HEARING_TESTED_ON);
        if (cell(row, Column.LEFT_EAR).isEmpty() && cell(row, Column.RIGHT_EAR).isEmpty()) {
            alone(row, List.of(Column.HEARING_TESTED_ON), "no ear");
            return;
        }
        Optional<Hearing> left = ear(row, Column.LEFT_EAR);
        Optional<Hearing> right = ear(row, Column.RIGHT_EAR);
        if (left.isPresent() && right.isPresent()) {
            animal.hearing.add(new Drafts.Read<>(
                    new HearingTest(date, left.get(), right.get()), row, headers.of(Column.LEFT_EAR)));
        }
    }

    private Optional<Hearing> ear(int row, Column column) {
        String word = cell(row, column);
        if (word.isEmpty()) {
            return Optional.of(Hearing.NOT_JUDGED);
        }
        Optional<Hearing> found = Hearing.of(word);
        if (found.isEmpty()) {
            problems.unknown("unknown-hearing", pointer(row, column), "hearing", word, Hearing.words());
        }
        return found;
    }

    /** Cells that say when, in a row that does not say what. */
    private void alone(int row, List<Column> columns, String missing) {
        columns.stream()
                .filter(column -> !cell(row, column).isEmpty())
                .findFirst()
                .ifPresent(column -> report(
                        "empty-record",
                        row,
                        column,
                        "\"" + cell(row, column) + "\" stands here, but the row has " + missing,
                        "what was found, or an empty cell"));
    }

    private boolean isId(int row, Column column, String text) {
        boolean good = ids.contains(text) || Individual.isId(text);
        if (good) {
            ids.add(text);
        } else {
            report(
                    "bad-id",
                    row,
                    column,
                    "\"" + text + "\" is not an id",
                    "1 to 80 characters, no control characters, no blank at either end, not beginning with x-");
        }
        return good;
    }

    private Optional<PartialDate> partialDate(int row) {
        String cell = text(row, Column.SEEN_ON);
        try {
            return cell.isEmpty() ? Optional.empty() : Optional.of(PartialDate.parse(cell));
        } catch (IllegalArgumentException e) {
            report("bad-date", row, Column.SEEN_ON, "\"" + cell + "\" is not a date", "a date such as 2026-05-01");
            return Optional.empty();
        }
    }

    Optional<LocalDate> date(int row, Column column) {
        String cell = cell(row, column);
        try {
            return cell.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(cell));
        } catch (DateTimeParseException e) {
            report("bad-date", row, column, "\"" + cell + "\" is not a date", "a date such as 2026-05-01");
            return Optional.empty();
        }
    }

    OptionalInt whole(int row, Column column) {
        String cell = cell(row, column);
        if (cell.isEmpty()) {
            return OptionalInt.empty();
        }
        if (!WHOLE.matcher(cell).matches()) {
            report("not-an-amount", row, column, "\"" + cell + "\" is not a whole number from 0 on", "0 to 999999999");
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(cell));
    }

    Optional<Probability> chance(int row, Column column) {
        String cell = text(row, column);
        try {
            return cell.isEmpty() ? Optional.empty() : Optional.of(Cells.chance(cell));
        } catch (IllegalArgumentException e) {
            report("bad-chance", row, column, String.valueOf(e.getMessage()), "0 to 1, such as 0.25 or 1 in 3");
            return Optional.empty();
        }
    }

    /** What a cell says, without what guards it against spreadsheets. */
    String text(int row, Column column) {
        return Cells.unguarded(cell(row, column));
    }

    private String cell(int row, Column column) {
        int at = headers.of(column);
        return at == Headers.NONE ? "" : sheet.rows().get(row).cell(at);
    }

    void report(String code, int row, Column column, String message, String expected) {
        problems.add(code, pointer(row, column), message, expected);
    }

    private void report(String code, int row, int column, String message, String expected) {
        problems.add(code, pointer(row, column), message, expected);
    }

    String pointer(int row, Column column) {
        return pointer(row, headers.of(column));
    }

    private String pointer(int row, int column) {
        List<String> names = new ArrayList<>(List.of(Integer.toString(row)));
        headers.word(column).ifPresent(names::add);
        return Pointer.of(names.toArray(String[]::new));
    }
}
