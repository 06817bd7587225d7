package org.geneticsrules.examples;

import java.util.concurrent.Callable;
import org.geneticsrules.answer.Answers;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Explains the look of one animal. */
@Command(
        name = "coat",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Explains how one animal's look comes about and what it does not tell.",
        footer = {
            "",
            "Why is Wicket's albino kit white, and what may it pass on?",
            "  genetics coat --genotype \"c/c B/b\" --omitted wild-type",
            "What may the stray Pellam, dark-eyed and brown, carry unseen?",
            "  genetics coat --look \"eye colour: dark, hue: brown\" --traits \"hue, eye colour\"",
            "",
            "A trait that changes with age or season is refused until --weeks, --moult or --season is stated."
        })
final class CoatCommand implements Callable<Integer> {

    @Mixin
    private OneAnimalOptions animal;

    @Override
    public Integer call() {
        return animal.answer(Answers::coat);
    }
}
