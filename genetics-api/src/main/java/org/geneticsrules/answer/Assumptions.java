package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;

/** The assumptions an answer makes, each once. */
final class Assumptions {

    private final Map<String, Assumption> made = new LinkedHashMap<>();

    Assumptions model(Model model) {
        return add(
                "model",
                "The rules of model " + model + " hold.",
                "Another model of the same traits may answer otherwise; \"impossible\" means impossible under this model.");
    }

    Assumptions mating(int lociRead) {
        add(
                "parentage",
                "The sire and the dam named are the parents of every kit.",
                "With another sire, or a foster dam recorded as mother, none of these chances applies.");
        if (lociRead > 1) {
            add(
                    "unlinked-loci",
                    "The " + lociRead + " loci read are inherited independently of one another.",
                    "If some lay close together on a chromosome, looks of the parents would stay together more often.");
        }
        add(
                "equal-viability",
                "All genotypes are equally likely to be born and to be scored.",
                "If some kits die before they are seen, the others make up larger shares.");
        return add(
                "no-new-mutation",
                "No allele changes between parent and kit.",
                "A new mutation can give a kit that is impossible here, very rarely.");
    }

    Assumptions omitted(String role, Animal animal) {
        animal.omitted()
                .ifPresent(convention -> add(
                        "omitted-loci-" + role,
                        "In the genotype of the " + role + ", " + convention.meaning() + ".",
                        convention == OmittedLoci.UNKNOWN
                                ? "Naming them narrows the answer."
                                : "If the " + role + " carries something else there, the answer changes."));
        return this;
    }

    Assumptions weighting(Population population) {
        add(
                "population-" + population.id().replace(' ', '-'),
                "The alleles of uncertain parents are as frequent as in population \"" + population.id() + "\""
                        + population.title().map(title -> " (" + title + ")").orElse("") + ".",
                "Other frequencies give other chances; compare the populations listed.");
        add(
                "hardy-weinberg",
                "Within that population, genotypes stand in Hardy-Weinberg proportions, restricted to what is known.",
                "Animals mated by coat are not in these proportions; carriers may be more or less common.");
        return add(
                "unrelated-parents",
                "The uncertain parents are unrelated to each other.",
                "Relatives share hidden alleles, which makes recessive kits more likely.");
    }

    private Assumptions add(String id, String text, String otherwise) {
        made.putIfAbsent(id, new Assumption(id, text, otherwise));
        return this;
    }

    List<Assumption> list() {
        return new ArrayList<>(made.values());
    }
}
