/**
 * Webhooks: what happens here, told to addresses that owners name.
 *
 * <p>Entry points: {@link club.emberwell.hook.Webhooks} keeps them, {@link
 * club.emberwell.hook.HookMatcher} puts what happened into their outbox, {@link
 * club.emberwell.hook.HookSender} sends it. {@link club.emberwell.hook.HookEvent} is all that can
 * be told; {@link club.emberwell.hook.HookConfig} what an operator sets.
 */
package club.emberwell.hook;
