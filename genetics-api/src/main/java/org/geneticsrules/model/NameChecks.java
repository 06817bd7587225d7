package org.geneticsrules.model;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.trait.Sex;

/** Checks the spelling of names and that nothing is named twice or left empty. */
final class NameChecks {

    /** A letter, then letters, digits, apostrophe, asterisk or point, then perhaps a superscript after a caret. */
    static final Pattern SYMBOL = Pattern.compile("\\p{L}[\\p{L}\\p{N}'*.]{0,30}(\\^[\\p{L}\\p{N}'*.+-]{1,30})?");

    private NameChecks() {}

    static void shape(ModelBuilder model, Problems problems) {
        if (model.id.isBlank() || model.version.isBlank()) {
            problems.add(
                    "blank-id", "", "the model has a blank id or version", "an id such as example.pea and a version");
        }
        model.evidence
                .keySet()
                .forEach(name -> PlainWords.check(name, "piece of evidence", Pointer.of("evidence", name), problems));
        if (model.loci.isEmpty()) {
            problems.add(
                    "no-loci", "/loci", "the model has no locus, so nothing could be inherited", "at least one locus");
        }
        locusSymbols(model, problems);
        for (LocusBuilder locus : model.loci.values()) {
            String pointer = Pointer.of("loci", locus.id);
            PlainWords.check(locus.id, "locus", pointer, problems);
            variableName(locus.id, pointer, problems);
            alleles(locus, pointer, problems);
            dominance(locus, pointer, problems);
            expressions(locus, pointer, problems);
        }
        new GroupChecks(model, problems).shape();
        new ViabilityChecks(model, problems).shape();
        for (TraitBuilder trait : model.traits.values()) {
            String pointer = Pointer.of("traits", trait.trait);
            PlainWords.check(trait.trait, "trait", pointer, problems);
            variableName(trait.trait, pointer, problems);
            trait.innerStates.ifPresent(states -> {
                states.forEach(state -> PlainWords.check(state, "state", pointer + "/states", problems));
                unique(states, "state", pointer + "/states", problems);
                if (states.isEmpty()) {
                    problems.add("no-states", pointer, "the inner trait has no states", "at least one state");
                }
            });
            unique(trait.cases.stream().map(Case::id).toList(), "case", pointer + "/cases", problems);
            CaseChecks numbers = new CaseChecks(model, problems);
            trait.cases.forEach(rule -> {
                String at = pointer + Pointer.of("cases", rule.id());
                caseName(rule.id(), at, problems);
                numbers.shape(rule.gives(), at);
            });
            trait.otherwise.ifPresent(rest -> numbers.shape(rest.gives(), pointer + "/otherwise"));
            if (model.loci.containsKey(trait.trait)) {
                problems.add(
                        "ambiguous-name",
                        pointer,
                        "\"" + trait.trait
                                + "\" names both a locus and a trait, so conditions could not tell them apart");
            }
        }
        model.masks.keySet().forEach(mask -> PlainWords.check(mask, "mask", Pointer.of("masks", mask), problems));
        model.populations
                .keySet()
                .forEach(name -> PlainWords.check(name, "population", Pointer.of("populations", name), problems));
    }

    /** Conditions read the sex and the season by these names. */
    private static void variableName(String id, String pointer, Problems problems) {
        if (id.equals(Sex.VARIABLE) || id.equals(LifeStage.SEASON)) {
            problems.add(
                    "reserved-name",
                    pointer,
                    "\"" + id + "\" names the " + id + " of the animal in conditions",
                    "another name");
        }
    }

    /** Dominance is stated for both sexes together, or for each of them. */
    private static void dominance(LocusBuilder locus, String pointer, Problems problems) {
        boolean forBoth = !locus.common.isEmpty();
        if (!locus.bySex.isEmpty() && (forBoth || locus.bySex.size() < Sex.values().length)) {
            problems.add(
                    "dominance-in-part",
                    pointer + "/dominance",
                    "the dominance of locus " + locus.id + " is stated for "
                            + locus.bySex.keySet().stream()
                                    .map(sex -> sex.word() + "s")
                                    .collect(Collectors.joining(" and "))
                            + (forBoth ? ", and for both sexes together" : " only"),
                    "either both sexes together, or each by itself");
        }
    }

    /** A case of this name could not be told from the one for all that is left over. */
    private static void caseName(String id, String pointer, Problems problems) {
        PlainWords.check(id, "case", pointer, problems);
        if ("otherwise".equals(id)) {
            problems.add(
                    "reserved-name",
                    pointer,
                    "\"otherwise\" names the genotypes that no case covers",
                    "another name for the case");
        }
    }

    /** The symbol stands before a colon in genotype text, so it is one word and belongs to one locus. */
    private static void locusSymbols(ModelBuilder model, Problems problems) {
        Map<String, String> owner = new LinkedHashMap<>();
        model.loci.keySet().forEach(id -> owner.put(id, id));
        for (LocusBuilder locus : model.loci.values()) {
            String symbol = locus.symbol.orElse(locus.id);
            String pointer = Pointer.of("loci", locus.id, "symbol");
            symbol(symbol, pointer, problems);
            String other = owner.putIfAbsent(symbol, locus.id);
            if (other != null && !other.equals(locus.id)) {
                problems.add(
                        "ambiguous-symbol",
                        pointer,
                        "\"" + symbol + "\" would name both locus " + other + " and locus " + locus.id
                                + " in genotype text",
                        "a symbol of its own for each locus");
            }
        }
    }

    private static void alleles(LocusBuilder locus, String pointer, Problems problems) {
        String list = pointer + "/alleles";
        if (locus.alleles.isEmpty()) {
            problems.add("no-alleles", list, "locus " + locus.id + " has no alleles", "at least one allele");
        }
        locus.repeatedAlleles.forEach(allele -> problems.add(
                "duplicate-allele", list, "allele " + allele + " of locus " + locus.id + " is declared twice"));
        Map<String, String> owner = new LinkedHashMap<>();
        for (Allele allele : locus.alleles.values()) {
            for (String spelling : allele.spellings()) {
                symbol(spelling, list, problems);
                String other = owner.putIfAbsent(spelling, allele.id());
                if (other != null) {
                    problems.add(
                            "ambiguous-allele",
                            list,
                            "\"" + spelling + "\" means both allele " + other + " and allele " + allele.id()
                                    + " of locus " + locus.id);
                }
            }
        }
    }

    private static void expressions(LocusBuilder locus, String pointer, Problems problems) {
        List<String> expressions = locus.expressions();
        if (expressions.isEmpty()) {
            problems.add(
                    "no-expressions",
                    pointer + "/expressions",
                    "locus " + locus.id + " has no expressions",
                    "at least one");
        }
        expressions.forEach(name -> PlainWords.check(name, "expression", pointer + "/expressions", problems));
        unique(expressions, "expression", pointer + "/expressions", problems);
    }

    static void unique(List<String> names, String what, String pointer, Problems problems) {
        Set<String> seen = new LinkedHashSet<>();
        names.stream()
                .filter(name -> !seen.add(name))
                .distinct()
                .forEach(name -> problems.add(
                        "duplicate-" + what, pointer, "the " + what + " \"" + name + "\" is stated twice"));
    }

    private static void symbol(String text, String pointer, Problems problems) {
        if (!SYMBOL.matcher(text).matches()) {
            problems.add(
                    "bad-symbol",
                    pointer,
                    "\"" + text + "\" cannot be a symbol in genotype text",
                    "a letter, then letters, digits, ' * or ., perhaps followed by ^ and a superscript");
        }
    }
}
